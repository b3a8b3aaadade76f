package dawnkettle.draw;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * The scale of a chart: from zero, in steps of 1, 2 or 5 times a power of ten, to just above the most.
 *
 * @param step between two marks
 * @param marks number of steps
 */
record ChartScale(BigDecimal step, int marks) {
    private static final int MOST_STEPS = 6;
    private static final List<BigDecimal> HANDY = List.of(BigDecimal.ONE, BigDecimal.valueOf(2), BigDecimal.valueOf(5));

    static ChartScale upTo(BigDecimal most) {
        if (most.signum() <= 0) return new ChartScale(BigDecimal.ONE, 1);
        for (int power = most.precision() - most.scale() - 3; ; power++)
            for (BigDecimal handy : HANDY) {
                BigDecimal step = handy.scaleByPowerOfTen(power);
                int marks = most.divide(step, 0, RoundingMode.CEILING).intValueExact();
                if (marks <= MOST_STEPS) return new ChartScale(step, marks);
            }
    }

    /** What stands beside the marks, from zero upwards. */
    List<String> labels() {
        List<String> labels = new ArrayList<>();
        for (int i = 0; i <= marks; i++) {
            BigDecimal value = step.multiply(BigDecimal.valueOf(i));
            labels.add(value.setScale(Math.max(0, step.scale()), RoundingMode.UNNECESSARY)
                    .toPlainString());
        }
        return labels;
    }

    /** How far up {@code value} stands, from 0 to 1. */
    double share(BigDecimal value) {
        return value.doubleValue() / (step.doubleValue() * marks);
    }
}
