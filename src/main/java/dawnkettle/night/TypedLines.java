package dawnkettle.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The lines of a mail that are words of the command line; what is quoted below and the signature are not. */
final class TypedLines {
    static final Set<String> DOORS = Set.of("order", "amend", "receive", "record");

    /** Kinds of record that may stand alone, without the word "record" before them. */
    private static final Set<String> KINDS = Set.of(
            "yield",
            "cooked",
            "cook",
            "cooled",
            "lost",
            "found",
            "count",
            "sold",
            "returned",
            "soak",
            "soaked",
            "packed",
            "waste",
            "used",
            "destroyed",
            "containers",
            "short",
            "price",
            "hours",
            "loaded",
            "hold",
            "release",
            "cancel",
            "away",
            "hands",
            "down",
            "up");

    /** From such a line on it is what is answered, or a signature. */
    private static final Pattern QUOTE_HEAD =
            Pattern.compile("(?i)(on .{4,200} wrote:|.{4,200} (a écrit|schrieb|escribió|escreveu|ha scritto) ?:"
                    + "|-+ ?(original|forwarded) message ?-+|begin forwarded message:|(from|sent): .*|_{10,}"
                    + "|(sent|get) .{0,20}(from|outlook) .{2,60})");

    private static final Pattern QUOTE_HEAD_BROKEN = Pattern.compile("(?i)on .{4,200}");

    /** Letters of a body that are looked at (common practice, no source). */
    private static final int MOST_LETTERS = 100_000;

    /** More lines than that nobody types with a thumb (common practice, no source). */
    static final int MOST = 40;

    private TypedLines() {}

    /** What is typed in a mail, and what else stands in it. */
    record Split(List<List<String>> typed, List<String> passedOver) {}

    static Split of(String body) {
        List<List<String>> typed = new ArrayList<>();
        List<String> others = new ArrayList<>();
        for (String line : lines(body).toList()) {
            List<String> words = words(line);
            String first = words.get(0).toLowerCase(Locale.ROOT);
            if ((DOORS.contains(first) || KINDS.contains(first)) && typed.size() < MOST) typed.add(words);
            else others.add(line);
        }
        return new Split(typed, others);
    }

    private static Stream<String> lines(String body) {
        String some = body.substring(0, Math.min(body.length(), MOST_LETTERS)).replace("\u0000", "");
        String text = some.stripLeading().startsWith("<") ? PlainWords.of(some) : some;
        List<String> all = text.lines().map(String::strip).toList();
        return all.subList(0, end(all)).stream().filter(line -> !line.isEmpty() && !line.startsWith(">"));
    }

    /** Where what was typed ends: a quotation's head may be broken in two. */
    private static int end(List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            boolean broken = i + 1 < lines.size()
                    && lines.get(i + 1).equalsIgnoreCase("wrote:")
                    && QUOTE_HEAD_BROKEN.matcher(line).matches();
            if (line.equals("--") || broken || QUOTE_HEAD.matcher(line).matches()) return i;
        }
        return lines.size();
    }

    /** At blanks; a full stop that a telephone put behind the last word is left out. */
    private static List<String> words(String line) {
        String bare = line.endsWith(".") ? line.substring(0, line.length() - 1) : line;
        return Stream.of(bare.replace('\u00A0', ' ').strip().split("\\s+")).toList();
    }
}
