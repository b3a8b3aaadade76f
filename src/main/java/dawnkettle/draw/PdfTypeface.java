package dawnkettle.draw;

import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Typeface;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The typeface of the sheets, Noto Sans in two weights, as it comes with the program. */
public final class PdfTypeface implements Typeface {
    private static final String FOLDER = "/dawnkettle/fonts/";

    /** What is shown for a character that the typeface lacks: the replacement character, or the nearest there is. */
    private static final int[] REPLACEMENTS = {0xFFFD, 0x25A1, '?'};

    private final Face regular;
    private final Face bold;

    private PdfTypeface(Face regular, Face bold) {
        this.regular = regular;
        this.bold = bold;
    }

    public static PdfTypeface notoSans() {
        return new PdfTypeface(Face.read("NotoSans-Regular.ttf"), Face.read("NotoSans-Bold.ttf"));
    }

    @Override
    public double widthMm(String text, Lettering lettering) {
        return face(lettering).ems(text) * lettering.points() * Lettering.MM_A_POINT;
    }

    /** Whether every character of {@code text} has a shape of its own. */
    public boolean shows(String text) {
        return text.equals(regular.shown(text)) && text.equals(bold.shown(text));
    }

    Face face(Lettering lettering) {
        return lettering.weight() == Lettering.Weight.BOLD ? bold : regular;
    }

    Face regular() {
        return regular;
    }

    Face bold() {
        return bold;
    }

    /** One weight. */
    static final class Face {
        private final TrueTypeFont font;
        private final CmapLookup glyphs;
        private final double unitsPerEm;
        private final int replacement;

        private Face(TrueTypeFont font) throws IOException {
            // Ligatures would make words narrower than they are laid out, and harder to copy out of the document.
            font.setEnableGsub(false);
            this.font = font;
            this.glyphs = font.getUnicodeCmapLookup();
            this.unitsPerEm = font.getUnitsPerEm();
            this.replacement = replacement(glyphs);
        }

        private static int replacement(CmapLookup glyphs) {
            for (int codePoint : REPLACEMENTS) if (glyphs.getGlyphId(codePoint) != 0) return codePoint;
            throw new IllegalStateException("the typeface has not even a question mark");
        }

        static Face read(String file) {
            try (InputStream in = PdfTypeface.class.getResourceAsStream(FOLDER + file)) {
                if (in == null) throw new IllegalStateException("typeface " + FOLDER + file + " is not in the program");
                return new Face(new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes())));
            } catch (IOException e) {
                throw new UncheckedIOException("typeface " + file + " cannot be read", e);
            }
        }

        TrueTypeFont font() {
            return font;
        }

        /** The text as it can be shown: what the typeface lacks becomes the replacement, control characters a space. */
        String shown(String text) {
            StringBuilder shown = new StringBuilder(text.length());
            text.codePoints().map(this::shown).forEach(shown::appendCodePoint);
            return shown.toString();
        }

        private int shown(int codePoint) {
            if (Character.isISOControl(codePoint)) return ' ';
            return glyphs.getGlyphId(codePoint) == 0 ? replacement : codePoint;
        }

        double ems(String text) {
            return text.codePoints().map(this::shown).mapToLong(this::advance).sum() / unitsPerEm;
        }

        private long advance(int codePoint) {
            try {
                return font.getAdvanceWidth(glyphs.getGlyphId(codePoint));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
