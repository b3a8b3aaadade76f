package dawnkettle.sheet;

import dawnkettle.draw.PdfTypeface;

/** Our own typeface, and where it has no letter a square as wide as it is high: so are the letters of East Asian typefaces. */
final class AnyScript implements Typeface {
    private final PdfTypeface latin = PdfTypeface.notoSans();

    @Override
    public double widthMm(String text, Lettering lettering) {
        double width = 0;
        int from = 0;
        for (int at = 0; at < text.length(); at = text.offsetByCodePoints(at, 1)) {
            if (!isSquare(text.codePointAt(at))) continue;
            width += latin.widthMm(text.substring(from, at), lettering) + lettering.points() * Lettering.MM_A_POINT;
            from = text.offsetByCodePoints(at, 1);
        }
        return width + latin.widthMm(text.substring(from), lettering);
    }

    static boolean isSquare(int codePoint) {
        return codePoint >= 0x2E80 && codePoint <= 0x9FFF
                || codePoint >= 0xF900 && codePoint <= 0xFAFF
                || codePoint >= 0xFF00 && codePoint <= 0xFF60;
    }
}
