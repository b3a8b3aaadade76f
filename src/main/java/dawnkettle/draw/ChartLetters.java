package dawnkettle.draw;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;

/** The letters of a chart, drawn from the outlines of the typeface that we bring along: the same on every machine. */
final class ChartLetters {
    private static final String TYPEFACE = "/dawnkettle/fonts/NotoSans-Regular.ttf";

    private final TrueTypeFont font;
    private final CmapLookup letters;

    ChartLetters() {
        try (InputStream in = ChartLetters.class.getResourceAsStream(TYPEFACE)) {
            font = new TTFParser().parseEmbedded(in);
            letters = font.getUnicodeCmapLookup();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Pixels that {@code text} takes at a size of {@code pixels} an em. */
    double width(String text, double pixels) {
        return outline(text, pixels, 0, 0).width();
    }

    /** The shape of {@code text} whose base line begins at x, y. */
    Path2D shape(String text, double pixels, double x, double y) {
        return outline(text, pixels, x, y).path();
    }

    /** A text's shape and how far it moved the pen. */
    private record Outline(Path2D path, double width) {}

    private Outline outline(String text, double pixels, double x, double y) {
        try {
            double scale = pixels / font.getUnitsPerEm();
            Path2D all = new Path2D.Double(Path2D.WIND_NON_ZERO);
            double pen = x;
            for (int letter : text.codePoints().toArray()) {
                int glyph = letters.getGlyphId(letter);
                AffineTransform place = new AffineTransform(scale, 0, 0, -scale, pen, y);
                var drawn = font.getGlyph().getGlyph(glyph);
                if (drawn != null) all.append(drawn.getPath().getPathIterator(place), false);
                pen += font.getAdvanceWidth(glyph) * scale;
            }
            return new Outline(all, pen - x);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
