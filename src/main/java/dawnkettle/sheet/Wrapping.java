package dawnkettle.sheet;

import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** Breaks text into lines that fit; nothing is ever cut off or made smaller. */
final class Wrapping {
    private static final Pattern NUMBER = Pattern.compile("\\d $");
    private static final Pattern UNIT = Pattern.compile("^[\\p{L}°%]{1,2}(?![\\p{L}\\d])");
    private static final Set<Character.UnicodeBlock> KANA =
            Set.of(Character.UnicodeBlock.HIRAGANA, Character.UnicodeBlock.KATAKANA);

    private final Typeface typeface;

    Wrapping(Typeface typeface) {
        this.typeface = typeface;
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
        return set(said, lettering, widthMm).stream()
                .mapToDouble(line -> line.lettering().lineMm())
                .sum();
    }

    /** Of the widest line where none is broken. */
    double widthMm(String said, Lettering lettering) {
        return set(said, lettering, Double.MAX_VALUE).stream()
                .mapToDouble(line -> typeface.widthMm(line.text(), line.lettering()))
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

    /** A number and a unit of one or two letters behind it, as "350 g", stay together. */
    private static boolean partsUnit(String text, int at) {
        return NUMBER.matcher(text.substring(0, at)).find()
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
