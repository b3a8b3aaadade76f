package dawnkettle.sheet;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleSupplier;
import java.util.regex.Pattern;

/**
 * Breaks text into lines that fit; nothing is ever cut off or made smaller. A typeface that remembers what it measured and
 * broke while a day's sheets are written: they say the same again and again, and each row is measured before it is drawn.
 */
final class Wrapping implements Typeface {
    private static final Pattern NUMBER = Pattern.compile("\\d $");
    private static final Pattern UNIT = Pattern.compile("^([\\p{L}°%]{1,2}(?![\\p{L}\\d])|×)");
    private static final Pattern TIMES = Pattern.compile("× $");
    private static final Set<Character.UnicodeBlock> KANA =
            Set.of(Character.UnicodeBlock.HIRAGANA, Character.UnicodeBlock.KATAKANA);

    private final Typeface typeface;
    private final Map<Looked, Double> widths = new HashMap<>();
    private final Map<Said, List<Line>> sets = new HashMap<>();
    private final Map<Row, Height> rows = new IdentityHashMap<>();

    private Wrapping(Typeface typeface) {
        this.typeface = typeface;
    }

    /** Of a typeface; itself where it is one. */
    static Wrapping of(Typeface typeface) {
        return typeface instanceof Wrapping remembering ? remembering : new Wrapping(typeface);
    }

    private record Height(double widthMm, double mm) {}

    private record Looked(String text, Lettering lettering) {}

    private record Said(String said, Lettering lettering, double widthMm) {}

    @Override
    public double widthMm(String text, Lettering lettering) {
        return widths.computeIfAbsent(new Looked(text, lettering), one -> typeface.widthMm(text, lettering));
    }

    /** How high a row is in a table of a width; it is measured where that is not known yet. */
    double rowMm(Row row, double widthMm, DoubleSupplier measured) {
        Height known = rows.get(row);
        if (known != null && known.widthMm() == widthMm) return known.mm();
        double mm = measured.getAsDouble();
        rows.put(row, new Height(widthMm, mm));
        return mm;
    }

    List<String> lines(String text, Lettering lettering, double widthMm) {
        List<String> lines = new ArrayList<>();
        for (String paragraph : text.split("\n", -1)) wrap(paragraph, lettering, widthMm, lines);
        return lines;
    }

    /** A line and how it looks. */
    record Line(String text, Lettering lettering) {}

    /** The lines of something said: the first language, and below it the second, smaller. */
    List<Line> set(String said, Lettering lettering, double widthMm) {
        return sets.computeIfAbsent(new Said(said, lettering, widthMm), one -> broken(said, lettering, widthMm));
    }

    private List<Line> broken(String said, Lettering lettering, double widthMm) {
        List<Line> set = new ArrayList<>();
        Lettering look = lettering;
        for (String part : said.split(Words.SECOND)) {
            Lettering its = look;
            lines(part, its, widthMm).forEach(line -> set.add(new Line(line, its)));
            look = lettering.second();
        }
        return set;
    }

    double heightMm(String said, Lettering lettering, double widthMm) {
        double height = 0;
        for (Line line : set(said, lettering, widthMm))
            height += line.lettering().lineMm();
        return height;
    }

    /** Of the widest line where none is broken. */
    double widestMm(String said, Lettering lettering) {
        return set(said, lettering, Double.MAX_VALUE).stream()
                .mapToDouble(line -> widthMm(line.text(), line.lettering()))
                .max()
                .orElse(0);
    }

    private void wrap(String text, Lettering lettering, double widthMm, List<String> lines) {
        if (fits(text, lettering, widthMm)) { // nearly all do, and looking for places to break is dear
            lines.add(text.strip());
            return;
        }
        String line = "";
        for (String piece : pieces(text)) {
            if (fits(line + piece, lettering, widthMm)) {
                line += piece;
                continue;
            }
            if (!line.isBlank()) lines.add(line.strip());
            line = piece.stripLeading();
            while (!fits(line, lettering, widthMm)) {
                int cut = longestFit(line, lettering, widthMm);
                lines.add(line.substring(0, cut));
                line = line.substring(cut);
            }
        }
        lines.add(line.strip());
    }

    private boolean fits(String text, Lettering lettering, double widthMm) {
        return typeface.widthMm(text.stripTrailing(), lettering) <= widthMm;
    }

    /** At least one character, so that a column too narrow for any still ends. */
    private int longestFit(String word, Lettering lettering, double widthMm) {
        int cut = word.offsetByCodePoints(0, 1);
        while (cut < word.length()) {
            int next = word.offsetByCodePoints(cut, 1);
            if (!fits(word.substring(0, next), lettering, widthMm)) break;
            cut = next;
        }
        return cut;
    }

    private static List<String> pieces(String text) {
        BreakIterator breaks = BreakIterator.getLineInstance(Locale.ROOT);
        breaks.setText(text);
        List<String> pieces = new ArrayList<>();
        int from = breaks.first();
        for (int to = breaks.next(); to != BreakIterator.DONE; to = breaks.next()) {
            if (to < text.length()
                    && (!mayBreak(text.codePointBefore(to), text.codePointAt(to)) || partsUnit(text, to))) continue;
            pieces.add(text.substring(from, to));
            from = to;
        }
        return pieces;
    }

    /** A number and a unit of one or two letters behind it, as "350 g", stay together; so do "3 ×" and what is counted. */
    private static boolean partsUnit(String text, int at) {
        String before = text.substring(0, at);
        return TIMES.matcher(before).find()
                || NUMBER.matcher(before).find()
                        && UNIT.matcher(text.substring(at)).find();
    }

    /** Of the places that the language allows only these: a time or a number with its sign stays whole. */
    private static boolean mayBreak(int before, int after) {
        return Character.isWhitespace(before)
                || before == '-'
                || before == '/'
                || Character.isIdeographic(before)
                || Character.isIdeographic(after)
                || KANA.contains(Character.UnicodeBlock.of(before));
    }
}
