package dawnkettle.label;

import java.util.List;

/**
 * How finely a head prints.
 *
 * @param dotsPerMetre dots a metre, as 8000 for eight dots a millimetre
 */
public record Pitch(int dotsPerMetre) {
    /** 8, 11.811 (300 an inch), 12 and 23.622 (600 an inch) dots a millimetre. */
    public static final List<Pitch> COMMON =
            List.of(new Pitch(8_000), new Pitch(11_811), new Pitch(12_000), new Pitch(23_622));

    public Pitch {
        if (dotsPerMetre < 4_000 || dotsPerMetre > 50_000)
            throw new IllegalArgumentException("\"" + dotsPerMetre + "\" dots a metre; write 4000 to 50000");
    }

    /** The nearest dot to a length in micrometres. */
    public int dots(long micrometres) {
        return Math.toIntExact(Math.floorDiv(micrometres * dotsPerMetre + 500_000, 1_000_000));
    }

    /** The dots that reach at least {@code micrometres}. */
    public int dotsReaching(long micrometres) {
        return Math.toIntExact(-Math.floorDiv(-micrometres * dotsPerMetre, 1_000_000));
    }

    /** The dots that stay within {@code micrometres}. */
    public int dotsWithin(long micrometres) {
        return Math.toIntExact(Math.floorDiv(micrometres * dotsPerMetre, 1_000_000));
    }

    /** Length in micrometres, rounded up, of so many dots. */
    public int micrometres(int dots) {
        return Math.toIntExact(-Math.floorDiv(-1_000_000L * dots, dotsPerMetre));
    }

    @Override
    public String toString() {
        return java.math.BigDecimal.valueOf(dotsPerMetre, 3)
                        .stripTrailingZeros()
                        .toPlainString() + " dots/mm";
    }
}
