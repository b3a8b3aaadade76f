package dawnkettle.cost;

import java.util.List;
import java.util.stream.IntStream;

/**
 * A Shewhart chart of single values: their mean, and limits of three standard deviations as the moving ranges tell them.
 * Method: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (individuals control charts).
 *
 * @param values what was measured, oldest first
 * @param centre what is usual
 * @param sigma spread about it, zero where all values are alike
 */
public record ControlChart(List<Double> values, double centre, double sigma) {
    /** Mean range of two values of a normal distribution, in standard deviations (d2 for n = 2, same source). */
    private static final double RANGE_OF_TWO = 1.128;

    private static final int LIMIT = 3;

    public ControlChart {
        values = List.copyOf(values);
    }

    /** The chart of {@code values} by their own mean and ranges. */
    public static ControlChart of(List<Double> values) {
        return of(values, values.size());
    }

    /** @param base how many values, from the first, tell what is usual; the others are only judged by it */
    public static ControlChart of(List<Double> values, int base) {
        List<Double> usual = values.subList(0, base);
        double centre = usual.stream().mapToDouble(value -> value).average().orElseThrow();
        double range = IntStream.range(1, base)
                .mapToDouble(i -> Math.abs(usual.get(i) - usual.get(i - 1)))
                .average()
                .orElse(0);
        return new ControlChart(values, centre, range / RANGE_OF_TWO);
    }

    public double upper() {
        return centre + LIMIT * sigma;
    }

    public double lower() {
        return centre - LIMIT * sigma;
    }

    /** How far a value lies from the centre, in standard deviations. */
    double distance(int at) {
        double off = values.get(at) - centre;
        if (sigma > 0) return off / sigma;
        return Math.abs(off) < 1e-9 ? 0 : Math.signum(off) * Double.MAX_VALUE;
    }
}
