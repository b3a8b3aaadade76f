package dawnkettle.cost;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * When figures that stand week by week went from one level to another, and by how much: the step or the ramp that fits
 * them best by least squares, where it fits so much better than one level that it is no chance (Bayesian information
 * criterion, Schwarz 1978).
 *
 * @param first place of the first value that lies off the old level
 * @param weeks over how many values it went; 1 for a step
 * @param before the old level
 * @param after the new level
 */
public record Shift(int first, int weeks, double before, double after) {
    /** A criterion this much smaller is strong evidence (Kass and Raftery 1995, from memory). */
    private static final double STRONG = 10;

    /** Figures that are told to three or four digits cannot fit better than this share of themselves. */
    private static final double GRAIN = 1e-4;

    private static final int LEVEL = 1;
    private static final int STEP = 3;
    private static final int RAMP = 4;

    /** The move as a share of the old level: 0.4 for 40 % more. */
    public double size() {
        return after / before - 1;
    }

    /** @param least share of the old level below which a move is none */
    public static Optional<Shift> find(List<Double> values, double least) {
        int count = values.size();
        double level = criterion(values, misfit(values, new Shift(0, 1, mean(values), mean(values))), LEVEL);
        double best = level - STRONG;
        Optional<Shift> found = Optional.empty();
        for (int first = 1; first < count; first++)
            for (int weeks = 1; first + weeks <= count; weeks++) {
                Shift shift = fitted(values, first, weeks);
                double criterion = criterion(values, misfit(values, shift), weeks == 1 ? STEP : RAMP);
                if (criterion >= best || Math.abs(shift.size()) < least) continue;
                best = criterion;
                found = Optional.of(shift);
            }
        return found;
    }

    /** Both levels by least squares: a value on the ramp belongs to both by its share of the way. */
    private static Shift fitted(List<Double> values, int first, int weeks) {
        double aa = 0;
        double ab = 0;
        double bb = 0;
        double ay = 0;
        double by = 0;
        for (int i = 0; i < values.size(); i++) {
            double b = way(i, first, weeks);
            double a = 1 - b;
            aa += a * a;
            ab += a * b;
            bb += b * b;
            ay += a * values.get(i);
            by += b * values.get(i);
        }
        double whole = aa * bb - ab * ab;
        return new Shift(first, weeks, (ay * bb - by * ab) / whole, (by * aa - ay * ab) / whole);
    }

    private static double way(int at, int first, int weeks) {
        return Math.max(0, Math.min(1, (at - first + 1.0) / weeks));
    }

    private static double misfit(List<Double> values, Shift shift) {
        return IntStream.range(0, values.size())
                .mapToDouble(i -> {
                    double way = way(i, shift.first, shift.weeks);
                    double off = values.get(i) - shift.before * (1 - way) - shift.after * way;
                    return off * off;
                })
                .sum();
    }

    private static double criterion(List<Double> values, double misfit, int figures) {
        double grain = GRAIN * mean(values);
        return values.size() * Math.log(misfit / values.size() + grain * grain) + figures * Math.log(values.size());
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(value -> value).average().orElseThrow();
    }
}
