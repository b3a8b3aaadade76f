package dawnkettle.draw;

import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;

/** One typeface as outlines. */
final class OutlineFace {
    private final TypefaceFile file;
    private final Map<Integer, GeneralPath> paths = new HashMap<>();

    OutlineFace(TypefaceFile file) {
        this.file = file;
    }

    /** A typeface that comes with the program. */
    static OutlineFace ours(String file) {
        return new OutlineFace(TypefaceFile.ours(file));
    }

    boolean has(int codePoint) {
        return file.has(codePoint);
    }

    /** How far the next glyph stands, as a share of the em. */
    double advance(int codePoint) {
        return file.advance(codePoint);
    }

    /** The glyph's outline in units of the em, the baseline at 0, up positive. */
    GeneralPath outline(int codePoint) {
        return paths.computeIfAbsent(codePoint, this::load);
    }

    double unitsPerEm() {
        return file.unitsPerEm();
    }

    /** Height of a small x as a share of the em. */
    double xHeight() {
        return outline('x').getBounds2D().getMaxY() / unitsPerEm();
    }

    private GeneralPath load(int codePoint) {
        try {
            var glyph = file.font().getGlyph().getGlyph(file.glyph(codePoint));
            return glyph == null ? new GeneralPath() : glyph.getPath();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
