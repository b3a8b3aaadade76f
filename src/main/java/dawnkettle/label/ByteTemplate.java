package dawnkettle.label;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Bytes with gaps, as a printer profile writes them: plain characters stand for themselves, {@code <1B>} for a byte in
 * hexadecimal, {@code {rows}} for a number in digits, {@code {rows:byte}}, {@code {rows:le16}} and {@code {rows:be16}} for
 * a number in one or two bytes (low or high byte first), {@code {crc:hex16}} for one in four hexadecimal digits,
 * {@code {data}} for the dots, {@code {name}} for the name that a kept picture has.
 */
public record ByteTemplate(String text) {
    private static final Pattern PIECE =
            Pattern.compile("<([0-9A-Fa-f]{2})>|\\{([a-zA-Z]+)(?::(byte|le16|be16|hex16))?}|([ -;=?-z|~])");

    private static final Set<String> KNOWN = Set.of(
            "data",
            "name",
            "crc",
            "rows",
            "rowBytes",
            "bytes",
            "feed",
            "copies",
            "darkness",
            "speed",
            "x",
            "y",
            "widthDots",
            "heightDots",
            "widthMm",
            "heightMm");

    public static final ByteTemplate NOTHING = new ByteTemplate("");

    public ByteTemplate {
        Matcher matcher = PIECE.matcher(text);
        int at = 0;
        while (at < text.length()) {
            if (!matcher.find(at) || matcher.start() != at)
                throw new IllegalArgumentException("\"" + text + "\" cannot be read at character " + (at + 1)
                        + "; write plain characters, <1B> or {rows}");
            String gap = matcher.group(2);
            if (gap != null && !KNOWN.contains(gap))
                throw new IllegalArgumentException("\"{" + gap + "}\" is not known; known are "
                        + String.join(", ", KNOWN.stream().sorted().toList()));
            at = matcher.end();
        }
    }

    public boolean isEmpty() {
        return text.isEmpty();
    }

    /** The gaps it has. */
    public Set<String> gaps() {
        Set<String> gaps = new LinkedHashSet<>();
        Matcher matcher = PIECE.matcher(text);
        while (matcher.find()) if (matcher.group(2) != null) gaps.add(matcher.group(2));
        return gaps;
    }

    /** Writes the bytes; {@code data} goes where {@code {data}} stands. */
    void write(ByteRoll out, Map<String, Integer> numbers, byte[] data) {
        Matcher matcher = PIECE.matcher(text);
        while (matcher.find()) {
            if (matcher.group(1) != null) out.add(Integer.parseInt(matcher.group(1), 16));
            else if (matcher.group(4) != null) out.add(matcher.group(4).charAt(0));
            else if (matcher.group(2).equals("data")) out.add(data);
            else writeNumber(out, numbers.get(matcher.group(2)), matcher.group(3));
        }
    }

    /** The same with {@code {name}} filled in. */
    ByteTemplate named(String name) {
        return new ByteTemplate(text.replace("{name}", name));
    }

    byte[] bytes() {
        ByteRoll out = new ByteRoll();
        write(out, Map.of(), new byte[0]);
        return out.toBytes();
    }

    private static void writeNumber(ByteRoll out, int number, String form) {
        if (form == null) out.add(Integer.toString(number).getBytes(StandardCharsets.US_ASCII));
        else
            switch (form) {
                case "hex16" ->
                    out.add(String.format(Locale.ROOT, "%04X", inBytes(number, 2))
                            .getBytes(StandardCharsets.US_ASCII));
                case "byte" -> out.add(inBytes(number, 1));
                case "le16" -> {
                    out.add(inBytes(number, 2) & 0xFF);
                    out.add(number >> 8);
                }
                default -> {
                    out.add(inBytes(number, 2) >> 8);
                    out.add(number & 0xFF);
                }
            }
    }

    private static int inBytes(int number, int bytes) {
        if (number < 0 || number >= 1 << 8 * bytes)
            throw new IllegalArgumentException("\"" + number + "\" does not go into " + bytes + " byte(s)");
        return number;
    }
}
