package dawnkettle.plan;

/**
 * What minutes at a temperature in the middle of a pack are worth against non-proteolytic Clostridium botulinum: minutes
 * at 90 °C. Ten of them are asked for (Chilled Food Association 2006, as cited by the UK FSA's training site on vacuum
 * packing). It judges a pasteurising step that was measured; it never lengthens a shelf life.
 */
public final class Lethality {
    /** Minutes at 90 °C that the guidance asks for. */
    public static final double ASKED_MINUTES = 10;

    /** In °C. */
    private static final double REFERENCE = 90;

    /** Degrees by which a tenfold rate differs, below and above 90 °C (same source). */
    private static final double Z_BELOW = 9;

    private static final double Z_ABOVE = 10;

    private Lethality() {}

    /** Minutes at 90 °C that one minute at {@code celsius} is worth. */
    public static double perMinute(double celsius) {
        return StrictMath.pow(10, (celsius - REFERENCE) / (celsius < REFERENCE ? Z_BELOW : Z_ABOVE));
    }

    /** Minutes at a steady {@code celsius} that are enough. */
    public static double minutesAsked(double celsius) {
        return ASKED_MINUTES / perMinute(celsius);
    }

    /** What a measured course is worth: one reading of the middle of the pack a minute. */
    public static double minutes(double... celsiusByMinute) {
        double sum = 0;
        for (double celsius : celsiusByMinute) sum += perMinute(celsius);
        return sum;
    }
}
