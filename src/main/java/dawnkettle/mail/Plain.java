package dawnkettle.mail;

import java.util.Locale;
import java.util.regex.Pattern;

/** Text that others wrote, made fit to stand in one line of a mail. */
final class Plain {
    private static final Pattern BEFORE_UNIT =
            Pattern.compile("(?<=[0-9]) (?=(?:kg|g|lb|oz|l|ml|min|h|%|°C|°F|mm)(?![A-Za-z]))");

    private Plain() {}

    /** Without control characters and without the marks that turn the direction of reading; line breaks become blanks. */
    static String line(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.replace("\r\n", "\n")
                .codePoints()
                .map(Plain::clean)
                .filter(c -> c >= 0)
                .forEach(clean::appendCodePoint);
        return clean.toString().strip();
    }

    /** With a capital at its head, where a letter stands there; the name of a file or a unit stays as it is written. */
    static String sentence(String text) {
        String plain = line(text);
        if (plain.isEmpty() || plain.split(" ", 2)[0].matches(".*[._/].+")) return plain;
        int head = plain.offsetByCodePoints(0, 1);
        return plain.substring(0, head).toUpperCase(Locale.ROOT) + plain.substring(head);
    }

    private static int clean(int c) {
        if (c == '\n' || c == '\r' || c == '\t' || c == 0x2028 || c == 0x2029 || c == 0x85) return ' ';
        boolean turns = c >= 0x202A && c <= 0x202E || c >= 0x2066 && c <= 0x2069 || c == 0x200E || c == 0x200F;
        return turns || Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE ? -1 : c;
    }

    /** Fit for HTML text and for attribute values in quotes; a figure and its unit stay on one line. */
    static String html(String text) {
        return BEFORE_UNIT
                .matcher(line(text))
                .replaceAll("\u00A0")
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
