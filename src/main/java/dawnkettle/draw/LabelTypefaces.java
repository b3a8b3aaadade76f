package dawnkettle.draw;

import dawnkettle.label.Dots;
import java.awt.geom.AffineTransform;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The typefaces of labels: ours first, then those configured, chosen character by character. */
public final class LabelTypefaces {
    /** Written one letter after the other, so that outlines side by side are right. */
    private static final Set<Character.UnicodeScript> UNSHAPED = Set.of(
            Character.UnicodeScript.COMMON,
            Character.UnicodeScript.LATIN,
            Character.UnicodeScript.GREEK,
            Character.UnicodeScript.CYRILLIC,
            Character.UnicodeScript.ARMENIAN,
            Character.UnicodeScript.GEORGIAN,
            Character.UnicodeScript.HAN,
            Character.UnicodeScript.HIRAGANA,
            Character.UnicodeScript.KATAKANA,
            Character.UnicodeScript.HANGUL,
            Character.UnicodeScript.BOPOMOFO);

    private final List<OutlineFace> regular = new ArrayList<>();
    private final List<OutlineFace> bold = new ArrayList<>();

    /** @param more stand in, in this order, where ours lack a character */
    public LabelTypefaces(List<TypefaceFile> more) {
        regular.add(OutlineFace.ours("NotoSans-Regular.ttf"));
        bold.add(OutlineFace.ours("NotoSans-Bold.ttf"));
        for (TypefaceFile file : more) {
            OutlineFace face = new OutlineFace(file);
            regular.add(face);
            bold.add(face);
        }
    }

    /** Only the typefaces that come with the program. */
    public static LabelTypefaces ours() {
        return new LabelTypefaces(List.of());
    }

    /** Why {@code text} cannot be set; empty where it can. */
    Optional<String> objection(String text) {
        for (int codePoint : characters(text)) {
            Character.UnicodeScript script = Character.UnicodeScript.of(codePoint);
            String shown = Character.toString(codePoint);
            if (!UNSHAPED.contains(script))
                return Optional.of("\"" + shown + "\" is of the script "
                        + script.name().toLowerCase(Locale.ROOT) + ", which needs shaping");
            if (face(codePoint, false).isEmpty()) return Optional.of("no typeface has \"" + shown + "\"");
        }
        return Optional.empty();
    }

    /** Height of a small x as a share of the em. */
    double xHeight() {
        return regular.get(0).xHeight();
    }

    /** Dots from the first glyph's start to the last one's end. */
    int width(String text, int size, boolean isBold) {
        int width = 0;
        for (int codePoint : characters(text)) width += advance(codePoint, size, isBold);
        return width;
    }

    /** Inks, or clears, one line of text. */
    void set(Dots.Ink ink, LineOfText line) {
        int pen = line.x();
        for (int codePoint : characters(line.text())) {
            stamp(ink, codePoint, pen, line);
            pen += advance(codePoint, line.size(), line.bold());
        }
    }

    /** A line of text at its place in dots. */
    record LineOfText(String text, int x, int baseline, int size, boolean bold, boolean white) {}

    private void stamp(Dots.Ink ink, int codePoint, int pen, LineOfText line) {
        OutlineFace face = face(codePoint, line.bold()).orElseThrow();
        double scale = line.size() / face.unitsPerEm();
        AffineTransform toDots = new AffineTransform(scale, 0, 0, -scale, pen, line.baseline());
        new OutlineFill(face.outline(codePoint), toDots).into((y, from, until) -> {
            for (int x = from; x < until; x++) ink.set(x, y, !line.white());
        });
    }

    private int advance(int codePoint, int size, boolean isBold) {
        return face(codePoint, isBold)
                .map(face -> (int) Math.round(face.advance(codePoint) * size))
                .orElse(size);
    }

    private Optional<OutlineFace> face(int codePoint, boolean isBold) {
        return (isBold ? bold : regular)
                .stream().filter(face -> face.has(codePoint)).findFirst();
    }

    private static int[] characters(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().toArray();
    }
}
