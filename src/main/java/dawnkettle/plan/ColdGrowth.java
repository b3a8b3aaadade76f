package dawnkettle.plan;

/**
 * How fast Listeria grows in the cold, from one observation to another temperature: the square-root law with the lowest
 * temperature of the FDA/FSIS 2003 assessment, appendix 8 (-1.18 °C: from memory, sure as their value; it reproduces
 * their table). It says why a warm cold room shortens a life; it never lengthens one.
 */
public final class ColdGrowth {
    /** In °C; see above. */
    private static final double LOWEST = -1.18;

    private ColdGrowth() {}

    /** The growth rate at {@code at} °C where {@code rate} was seen at {@code seenAt} °C; in the same unit. */
    public static double rate(double rate, double seenAt, double at) {
        if (seenAt <= LOWEST) throw new IllegalArgumentException("nothing is seen to grow at " + seenAt + " °C");
        if (at <= LOWEST) return 0;
        double root = (at - LOWEST) / (seenAt - LOWEST);
        return rate * root * root;
    }

    /** Logs a day of a culture that doubles in {@code hours}. */
    public static double logsPerDay(double hours) {
        return 24 / hours * StrictMath.log10(2);
    }
}
