package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** Lines of a paragraph that was broken at the width of a screen, as one line again. */
final class Unwrap {
    /** Letters of a line that may have been broken off (common practice, no source). */
    private static final int WIDE = 60;

    private static final Kind[] HEADS = {
        Kind.WEEKDAY, Kind.DAY, Kind.DATE, Kind.MONTH, Kind.BEGUN, Kind.NEXT_WEEK, Kind.ORDINAL, Kind.BYE, Kind.HELLO
    };

    private Unwrap() {}

    static List<String> of(List<String> lines, Lexicon lexicon) {
        List<String> whole = new ArrayList<>();
        boolean open = false;
        for (String line : lines) {
            String before = whole.isEmpty() ? "" : whole.get(whole.size() - 1);
            boolean fits = before.length() + line.length() < OwnLines.LONGEST_LINE;
            if (open && fits && goesOn(before, line, lexicon)) whole.set(whole.size() - 1, before + " " + line);
            else whole.add(line);
            open = line.length() >= WIDE && !line.matches(".*[.:!?;]|.*\\t.*");
        }
        return whole;
    }

    /** Not where the next line begins with a day, which heads what follows. */
    private static boolean goesOn(String line, String next, Lexicon lexicon) {
        List<Sense> before = lexicon.senses(line);
        List<Sense> behind = lexicon.senses(next);
        if (before.isEmpty() || behind.isEmpty() || next.contains("\t") || next.endsWith(":")) return false;
        boolean small = Character.isLowerCase(next.charAt(0))
                && before.get(before.size() - 1).is(Kind.NOISE, Kind.UNKNOWN, Kind.PAST, Kind.REASON);
        boolean comma = line.endsWith(",");
        return (small || comma) && behind.stream().limit(3).noneMatch(sense -> sense.is(HEADS));
    }
}
