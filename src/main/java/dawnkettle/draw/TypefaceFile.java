package dawnkettle.draw;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeCollection;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** One typeface, read from its own file and never from the machine's set: one that comes with the program, or one the shop names. */
public final class TypefaceFile {
    private static final String FOLDER = "/dawnkettle/fonts/";

    /** The first four bytes of a file that holds several typefaces (ISO/IEC 14496-22, collections). */
    private static final byte[] COLLECTION = "ttcf".getBytes(StandardCharsets.US_ASCII);

    private final String name;
    private final TrueTypeFont font;
    private final CmapLookup glyphs;
    private final double unitsPerEm;

    private TypefaceFile(String name, TrueTypeFont font) throws IOException {
        // Ligatures would make words narrower than they are laid out, and harder to copy out of the document.
        font.setEnableGsub(false);
        this.name = name;
        this.font = font;
        this.glyphs = font.getUnicodeCmapLookup();
        this.unitsPerEm = font.getUnitsPerEm();
    }

    /** A typeface that comes with the program. */
    static TypefaceFile ours(String file) {
        try (InputStream in = TypefaceFile.class.getResourceAsStream(FOLDER + file)) {
            if (in == null) throw new IllegalStateException("typeface " + FOLDER + file + " is not in the program");
            return new TypefaceFile(file, parsed(in.readAllBytes()));
        } catch (IOException e) {
            throw new UncheckedIOException("typeface " + file + " cannot be read", e);
        }
    }

    /**
     * A typeface that the shop names; of a file that holds several, the first.
     *
     * @throws BadFile where it cannot be set into a sheet
     */
    public static TypefaceFile read(Path file) {
        try {
            TrueTypeFont font = parsed(Files.readAllBytes(file));
            if (font instanceof OpenTypeFont outlines && outlines.isPostScript())
                throw refused(file, "has outlines of another kind than TrueType's");
            return new TypefaceFile(file.toString(), font);
        } catch (IOException e) {
            throw refused(file, "cannot be read as a TrueType typeface");
        }
    }

    /** Each that can be used; of the others a problem. */
    public static List<TypefaceFile> read(List<Path> files, List<Problem> problems) {
        List<TypefaceFile> read = new ArrayList<>();
        for (Path file : files) {
            try {
                read.add(read(file));
            } catch (BadFile bad) {
                problems.addAll(bad.problems());
            }
        }
        return read;
    }

    private static TrueTypeFont parsed(byte[] bytes) throws IOException {
        if (!Arrays.equals(Arrays.copyOf(bytes, COLLECTION.length), COLLECTION))
            return new TTFParser().parse(new RandomAccessReadBuffer(bytes));
        // It stays open as long as its typeface is used, that is, as long as the program runs.
        TrueTypeFont[] first = new TrueTypeFont[1];
        new TrueTypeCollection(new ByteArrayInputStream(bytes)).processAllFonts(font -> {
            if (first[0] == null) first[0] = font;
        });
        if (first[0] == null) throw new IOException("a collection of no typeface");
        return first[0];
    }

    private static BadFile refused(Path file, String what) {
        return new BadFile(List.of(new Problem(
                Place.of("shop.toml"),
                "typeface \"" + file + "\" " + what,
                "name a .ttf or .ttc file with TrueType outlines under files of [typefaces], as that of the"
                        + " package fonts-droid-fallback")));
    }

    TrueTypeFont font() {
        return font;
    }

    boolean has(int codePoint) {
        return glyph(codePoint) != 0;
    }

    int glyph(int codePoint) {
        return glyphs.getGlyphId(codePoint);
    }

    double unitsPerEm() {
        return unitsPerEm;
    }

    /** How far the next glyph stands, as a share of the em. */
    double advance(int codePoint) {
        try {
            return font.getAdvanceWidth(glyph(codePoint)) / unitsPerEm;
        } catch (IOException e) {
            throw new UncheckedIOException(name, e);
        }
    }
}
