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
            "loaded",
            "hold",
            "release",
            "cancel",
            "away",
            "hands",
            "down",
            "up");

    private static final Pattern QUOTE_HEAD =
            Pattern.compile("(?i)(on .{4,120} wrote:|-+ ?original message ?-+|from: .*|_{10,})");
    private static final Pattern BREAK = Pattern.compile("(?i)<br */?>|</(p|div|li|tr|h[1-6])>");
    private static final Pattern UNREAD = Pattern.compile("(?is)<(style|script|head|blockquote).*?</\\1>");
    private static final Pattern TAG = Pattern.compile("<[^>]*>");

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
        String text = body.stripLeading().startsWith("<") ? plain(body) : body;
        return text.lines()
                .map(String::strip)
                .takeWhile(
                        line -> !line.equals("--") && !QUOTE_HEAD.matcher(line).matches())
                .filter(line -> !line.isEmpty() && !line.startsWith(">"));
    }

    private static String plain(String html) {
        String broken = BREAK.matcher(UNREAD.matcher(html).replaceAll(" ")).replaceAll("\n");
        return TAG.matcher(broken)
                .replaceAll(" ")
                .replace("&nbsp;", " ")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&#39;", "'")
                .replace("&amp;", "&");
    }

    /** At blanks; a full stop that a telephone put behind the last word is left out. */
    private static List<String> words(String line) {
        String bare = line.endsWith(".") ? line.substring(0, line.length() - 1) : line;
        return Stream.of(bare.replace('\u00A0', ' ').strip().split("\\s+")).toList();
    }
}
