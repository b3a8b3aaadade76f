package dawnkettle.cost;

import java.util.ArrayList;
import java.util.List;

/**
 * A chart of values that remember those before them, which sees a small move that lasts sooner than single values do.
 * Method: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4 (EWMA control charts).
 *
 * @param values the remembering values, the start first
 * @param upper limit for a long series
 * @param lower the same below
 */
public record EwmaChart(List<Double> values, double upper, double lower) {
    /** How much the newest value weighs; the handbook advises 0.2 to 0.3. */
    public static final double WEIGHT = 0.3;

    private static final int LIMIT = 3;

    public EwmaChart {
        values = List.copyOf(values);
    }

    /**
     * @param start what is usual
     * @param sigma spread of single values
     */
    public static EwmaChart of(List<Double> measured, double start, double sigma) {
        List<Double> values = new ArrayList<>(List.of(start));
        for (double value : measured) values.add(WEIGHT * value + (1 - WEIGHT) * values.get(values.size() - 1));
        double width = LIMIT * sigma * Math.sqrt(WEIGHT / (2 - WEIGHT));
        return new EwmaChart(values, start + width, start - width);
    }

    /** Whether the last value lies outside. */
    public boolean isOut() {
        double last = values.get(values.size() - 1);
        return last > upper || last < lower;
    }
}
