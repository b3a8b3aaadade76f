package dawnkettle.mail;

import java.lang.Character.UnicodeScript;
import java.util.ArrayList;
import java.util.List;

/** Plain text set in columns of a typeface in which every sign is as wide as another. */
final class TextColumn {
    private TextColumn() {}

    /** Columns that {@code text} takes: two for each East Asian sign, none for an accent of its own. */
    static int width(String text) {
        return text.codePoints().map(TextColumn::width).sum();
    }

    private static int width(int c) {
        int type = Character.getType(c);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT)
            return 0;
        UnicodeScript script = UnicodeScript.of(c);
        boolean wide = script == UnicodeScript.HAN
                || script == UnicodeScript.HIRAGANA
                || script == UnicodeScript.KATAKANA
                || script == UnicodeScript.HANGUL
                || c >= 0xFF01 && c <= 0xFF60
                || c >= 0x1F300 && c <= 0x1FAFF;
        return wide ? 2 : 1;
    }

    static String pad(String text, int width, boolean right) {
        String blanks = " ".repeat(Math.max(0, width - width(text)));
        return right ? blanks + text : text + blanks;
    }

    /** Breaks at blanks, and inside a word only where it is wider than a line; at least one line. */
    static List<String> wrap(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" +")) {
            String rest = word;
            if (line.length() > 0 && width(line.toString()) + 1 + width(rest) > width) flush(line, lines);
            while (width(rest) > width) {
                int cut = fitting(rest, width);
                lines.add(rest.substring(0, cut));
                rest = rest.substring(cut);
            }
            if (line.length() > 0) line.append(' ');
            line.append(rest);
        }
        if (line.length() > 0 || lines.isEmpty()) flush(line, lines);
        return lines;
    }

    private static void flush(StringBuilder line, List<String> lines) {
        lines.add(line.toString());
        line.setLength(0);
    }

    private static int fitting(String word, int width) {
        int cut = 0;
        int used = 0;
        while (cut < word.length()) {
            int c = word.codePointAt(cut);
            if (used + width(c) > width && cut > 0) break;
            used += width(c);
            cut += Character.charCount(c);
        }
        return cut;
    }
}
