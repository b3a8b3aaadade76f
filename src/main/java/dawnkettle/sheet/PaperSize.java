package dawnkettle.sheet;

import dawnkettle.shop.House;
import java.util.Locale;

/** How large a sheet of paper is, in millimetres, as it is held. */
public record PaperSize(double widthMm, double heightMm) {
    /** ISO 216 (from memory). */
    public static final PaperSize A4 = new PaperSize(210, 297);

    /** 8 1/2 by 11 inches, ANSI/ASME Y14.1 (from memory). */
    public static final PaperSize LETTER = new PaperSize(215.9, 279.4);

    public static PaperSize of(House.Paper paper) {
        return switch (paper) {
            case A4 -> A4;
            case LETTER -> LETTER;
        };
    }

    public PaperSize landscape() {
        return new PaperSize(Math.max(widthMm, heightMm), Math.min(widthMm, heightMm));
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%.1fx%.1f mm", widthMm, heightMm);
    }
}
