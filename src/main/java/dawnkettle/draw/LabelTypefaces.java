package dawnkettle.draw;

import dawnkettle.label.Dots;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
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

    /** @param more TrueType files that stand in where ours lack a character, in this order */
    public LabelTypefaces(List<Path> more) throws IOException {
        regular.add(OutlineFace.ours("NotoSans-Regular.ttf"));
        bold.add(OutlineFace.ours("NotoSans-Bold.ttf"));
        for (Path file : more) {
            try (InputStream in = Files.newInputStream(file)) {
                OutlineFace face = OutlineFace.read(file.getFileName().toString(), in);
                regular.add(face);
                bold.add(face);
            }
        }
    }

    /** Ours, and more that stand in for what ours lack. @throws BadFile where one of them cannot be read */
    public static LabelTypefaces with(List<Path> more) {
        try {
            return new LabelTypefaces(more);
        } catch (IOException e) {
            throw new BadFile(List.of(new Problem(
                    Place.of("shop.toml"),
                    "typefaces: one cannot be read: \"" + e.getMessage() + "\"",
                    "name TrueType files with outlines of their own")));
        }
    }

    /** Only the typefaces that come with the program. */
    public static LabelTypefaces ours() {
        try {
            return new LabelTypefaces(List.of());
        } catch (IOException e) {
            throw new IllegalStateException("our own typefaces do not open", e);
        }
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
