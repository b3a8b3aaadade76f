package dawnkettle.draw;

import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;

/** One typeface as outlines, read from its own file and never from the machine's set. */
final class OutlineFace {
    private final String name;
    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final double unitsPerEm;
    private final Map<Integer, GeneralPath> paths = new HashMap<>();

    private OutlineFace(String name, TrueTypeFont font) throws IOException {
        this.name = name;
        this.font = font;
        this.glyphs = font.getUnicodeCmapLookup();
        this.unitsPerEm = font.getUnitsPerEm();
    }

    static OutlineFace read(String name, InputStream file) throws IOException {
        return new OutlineFace(name, new TTFParser().parseEmbedded(file));
    }

    /** A typeface that comes with the program. */
    static OutlineFace ours(String file) {
        try (InputStream in = OutlineFace.class.getResourceAsStream("/dawnkettle/fonts/" + file)) {
            if (in == null) throw new IllegalStateException("no typeface " + file + " in the program");
            return read(file, in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    boolean has(int codePoint) {
        return glyphs.getGlyphId(codePoint) != 0;
    }

    /** How far the next glyph stands, as a share of the em. */
    double advance(int codePoint) {
        try {
            return font.getAdvanceWidth(glyphs.getGlyphId(codePoint)) / unitsPerEm;
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }

    /** The glyph's outline in units of the em, the baseline at 0, up positive. */
    GeneralPath outline(int codePoint) {
        return paths.computeIfAbsent(codePoint, this::load);
    }

    double unitsPerEm() {
        return unitsPerEm;
    }

    /** Height of a small x as a share of the em. */
    double xHeight() {
        return outline('x').getBounds2D().getMaxY() / unitsPerEm;
    }

    private GeneralPath load(int codePoint) {
        try {
            var glyph = font.getGlyph().getGlyph(glyphs.getGlyphId(codePoint));
            return glyph == null ? new GeneralPath() : glyph.getPath();
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }
}
