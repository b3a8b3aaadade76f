package dawnkettle.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * The scale of a chart, in steps of 1, 2 or 5 times a power of ten, to just above the most.
 *
 * @param from its lowest mark: zero, or above it for a close-up
 * @param step between two marks
 * @param marks number of steps
 */
public record ChartScale(BigDecimal from, BigDecimal step, int marks) {
    private static final int MOST_STEPS = 6;
    private static final List<BigDecimal> HANDY = List.of(BigDecimal.ONE, BigDecimal.valueOf(2), BigDecimal.valueOf(5));

    /** Where all figures lie within a quarter of the most, they are shown close up; a scale from zero would hide them. */
    private static final BigDecimal CLOSE = new BigDecimal("0.75");

    public static ChartScale of(BigDecimal least, BigDecimal most) {
        if (least.compareTo(most.multiply(CLOSE)) < 0 || least.compareTo(most) == 0) return upTo(most);
        for (ChartScale scale = upTo(most.subtract(least)); ; scale = scale.coarser()) {
            BigDecimal from = least.divide(scale.step, 0, RoundingMode.FLOOR).multiply(scale.step);
            int marks = most.subtract(from)
                    .divide(scale.step, 0, RoundingMode.CEILING)
                    .intValueExact();
            if (marks <= MOST_STEPS) return new ChartScale(from, scale.step, Math.max(1, marks));
        }
    }

    private ChartScale coarser() {
        return upTo(step.multiply(BigDecimal.valueOf(MOST_STEPS)).multiply(new BigDecimal("1.01")));
    }

    public static ChartScale upTo(BigDecimal most) {
        if (most.signum() <= 0) return new ChartScale(BigDecimal.ZERO, BigDecimal.ONE, 1);
        for (int power = most.precision() - most.scale() - 3; ; power++)
            for (BigDecimal handy : HANDY) {
                BigDecimal step = handy.scaleByPowerOfTen(power);
                int marks = most.divide(step, 0, RoundingMode.CEILING).intValueExact();
                if (marks <= MOST_STEPS) return new ChartScale(BigDecimal.ZERO, step, marks);
            }
    }

    /** What stands beside the marks, from the lowest upwards. */
    public List<String> labels() {
        List<String> labels = new ArrayList<>();
        for (int i = 0; i <= marks; i++) {
            BigDecimal value = from.add(step.multiply(BigDecimal.valueOf(i)));
            labels.add(value.setScale(Math.max(0, step.scale()), RoundingMode.UNNECESSARY)
                    .toPlainString());
        }
        return labels;
    }

    /** How far up {@code value} stands, from 0 to 1. */
    public double share(BigDecimal value) {
        return value.subtract(from).doubleValue() / (step.doubleValue() * marks);
    }
}
