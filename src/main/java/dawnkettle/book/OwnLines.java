package dawnkettle.book;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the writer of a mail wrote just now.
 *
 * @param lines own lines, none blank, without quotations
 * @param quoted whether something was left out as quoted or forwarded
 * @param forwarded what is sent on below them, if anything is
 */
record OwnLines(List<String> lines, boolean quoted, Forwarded forwarded) {
    /** No order has more; what comes after is not read but asked about as one. */
    static final int MOST_LINES = 400;

    /** Letters; what is longer is asked about (common practice, no source). */
    static final int LONGEST_LINE = 2_000;

    private static final Pattern FORWARDED =
            Pattern.compile("(?i)[-_ ]{2,}\\s*(?:forwarded message|mensaje reenviado)\\b.*|begin forwarded message:?");

    private static final Pattern QUOTE_HEAD =
            Pattern.compile("(?i)(?:on|el|am|le)\\b.{0,200}(?:wrote|escribi[oó]|schrieb|a écrit)\\s*:?\\s*");
    private static final Pattern OLD_MAIL =
            Pattern.compile("(?i)[-_ ]{2,}\\s*(?:original message|forwarded message|mensaje original|"
                    + "mensaje reenviado)\\b.*|begin forwarded message:?|_{10,}");
    private static final Pattern OLD_HEAD = Pattern.compile("(?i)\\*?(?:from|de)\\*?:\\s.*");
    private static final Pattern SENT =
            Pattern.compile("(?i)\\*?(?:sent|date|enviado|fecha|to|para|subject)\\*?:\\s.*");
    private static final Pattern DEVICE = Pattern.compile("(?i)(?:sent from my|get .* for|enviado desde mi)\\b.*");

    private static final Pattern NUMBERED = Pattern.compile("(\\d{1,2})[.)]\\s+(?=\\S)");
    private static final Pattern BULLET = Pattern.compile("^[-*•·–—]+\\s+");

    OwnLines {
        lines = List.copyOf(lines);
    }

    static OwnLines of(String body) {
        List<String> written = PlainBody.of(body).lines().map(String::strip).toList();
        List<String> all = written.stream().filter(line -> !line.isEmpty()).toList();
        List<String> own = new ArrayList<>();
        boolean quoted = false;
        for (int i = 0; i < all.size(); i++) {
            String line = all.get(i);
            String next = i + 1 < all.size() ? all.get(i + 1) : "";
            if (line.startsWith(">")) quoted = true;
            else if (startsOld(line, next) || startsOld(joined(line, next), "")) {
                quoted = true;
                if (!quotesFollow(all, i)) break;
                if (!QUOTE_HEAD.matcher(line).matches()) i++;
            } else if (!DEVICE.matcher(line).matches()) own.add(line);
        }
        return new OwnLines(unnumbered(own), quoted, forwarded(written));
    }

    private static Forwarded forwarded(List<String> all) {
        for (int i = 0; i < all.size(); i++) {
            if (!FORWARDED.matcher(all.get(i)).matches()) continue;
            int from = i + 1;
            while (from < all.size() && all.get(from).isEmpty()) from++;
            int until = from;
            while (until < all.size() && !all.get(until).isEmpty()) until++;
            List<String> below = all.subList(until, all.size()).stream()
                    .filter(line -> !line.isEmpty())
                    .toList();
            boolean again = below.stream().anyMatch(line -> startsOld(line, "") || line.startsWith(">"));
            return again ? Forwarded.NONE : new Forwarded(all.subList(from, until), below);
        }
        return Forwarded.NONE;
    }

    private static String joined(String line, String next) {
        return line.matches("(?i)(?:on|el)\\b.*") && line.length() + next.length() < 250 ? line + " " + next : line;
    }

    private static boolean startsOld(String line, String next) {
        if (line.length() > 300) return false;
        return QUOTE_HEAD.matcher(line).matches()
                || OLD_MAIL.matcher(line).matches()
                || OLD_HEAD.matcher(line).matches() && SENT.matcher(next).matches();
    }

    /** Where the quotation is marked line by line, what stands between or below it is still the writer's own. */
    private static boolean quotesFollow(List<String> all, int at) {
        return all.subList(at + 1, Math.min(all.size(), at + 3)).stream().anyMatch(line -> line.startsWith(">"));
    }

    /** Without the numbers of a numbered list and without the dots of a dotted one. */
    private static List<String> unnumbered(List<String> lines) {
        List<String> plain = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++)
            plain.add(BULLET.matcher(unnumbered(lines, i)).replaceFirst(""));
        return plain.stream().filter(line -> !line.isBlank()).toList();
    }

    /** A number counts as one of a list where the line above or below has its neighbour. */
    private static String unnumbered(List<String> lines, int at) {
        int own = number(lines.get(at));
        boolean listed = own > 0
                && (own > 1 && at > 0 && number(lines.get(at - 1)) == own - 1
                        || own == 1 && at + 1 < lines.size() && number(lines.get(at + 1)) == 2);
        return listed ? NUMBERED.matcher(lines.get(at)).replaceFirst("") : lines.get(at);
    }

    private static int number(String line) {
        Matcher numbered = NUMBERED.matcher(line);
        return numbered.lookingAt() ? Integer.parseInt(numbered.group(1)) : 0;
    }
}
