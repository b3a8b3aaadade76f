package dawnkettle.sheet;

import java.util.Locale;

/**
 * How a line of text looks.
 *
 * @param points body size, 72 to the inch
 */
public record Lettering(double points, Weight weight, Align align, Ink ink) {
    /** By definition of the point used in typesetting by computer: 1/72 inch of 25.4 mm. */
    public static final double MM_A_POINT = 25.4 / 72;

    /** Distance of lines, in body sizes (common practice, no source). */
    private static final double LINE = 1.24;

    /** Room above the baseline, in body sizes: capitals of Noto Sans are 0.714, accents rise to about 0.95. */
    private static final double RISE = 0.95;

    /** How large the second language is beside the first, and its least size (common practice, no source). */
    private static final double SECOND = 0.78;

    private static final double LEAST = 8;

    /** How thick the strokes are. */
    public enum Weight {
        REGULAR,
        BOLD
    }

    /** Which point of the line {@code x} is. */
    public enum Align {
        LEFT,
        CENTRE,
        RIGHT
    }

    /** Black, or white on black. */
    public enum Ink {
        BLACK,
        WHITE
    }

    public static Lettering plain(double points) {
        return new Lettering(points, Weight.REGULAR, Align.LEFT, Ink.BLACK);
    }

    public static Lettering bold(double points) {
        return new Lettering(points, Weight.BOLD, Align.LEFT, Ink.BLACK);
    }

    public Lettering aligned(Align other) {
        return new Lettering(points, weight, other, ink);
    }

    public Lettering white() {
        return new Lettering(points, weight, align, Ink.WHITE);
    }

    public Lettering ofPoints(double other) {
        return new Lettering(other, weight, align, ink);
    }

    /** As what is said in a second language stands below the first: smaller, never bold. */
    Lettering second() {
        return new Lettering(Math.min(points, Math.max(LEAST, points * SECOND)), Weight.REGULAR, align, ink);
    }

    public double lineMm() {
        return points * MM_A_POINT * LINE;
    }

    public double riseMm() {
        return points * MM_A_POINT * RISE;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT, "%.1f %s %s%s", points, lower(weight), lower(align), ink == Ink.WHITE ? " white" : "");
    }

    private static String lower(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT);
    }
}
