package dawnkettle.plan;

import java.util.List;

/**
 * Temperatures of a lot's middle as somebody read them, judged by the published two steps: 57 to 21 °C within 2 h, 57 to
 * 5 °C within 6 h in all (FDA Food Code 3-501.14(A)). Between two readings it is taken to fall evenly.
 */
public record CoolingCourse(List<Reading> readings) {
    /** Where the clock starts, in °C. */
    private static final double START = 57;

    /** Where the first step ends, in °C. */
    private static final double FIRST_STEP = 21;

    private static final double FIRST_STEP_HOURS = 2;
    private static final double BOTH_STEPS_HOURS = 6;

    /** One reading. */
    public record Reading(double hours, double celsius) {}

    public CoolingCourse {
        readings = List.copyOf(readings);
        if (readings.isEmpty()) throw new IllegalArgumentException("a cooling course needs a reading");
        for (int i = 1; i < readings.size(); i++)
            if (readings.get(i).hours() <= readings.get(i - 1).hours())
                throw new IllegalArgumentException(
                        "reading " + (i + 1) + " is not later than the one before; put them in order");
    }

    /** Whether both steps were met; a course that was not followed to its end does not meet them. */
    public boolean meetsTwoSteps() {
        double start = hoursAt(START);
        return hoursAt(FIRST_STEP) - start <= FIRST_STEP_HOURS && hoursAt(Cooling.COLD) - start <= BOTH_STEPS_HOURS;
    }

    /** When it first was at {@code celsius} or below; the first reading where that was cold already. */
    double hoursAt(double celsius) {
        Reading before = readings.get(0);
        if (before.celsius() <= celsius) return before.hours();
        for (Reading reading : readings) {
            if (reading.celsius() <= celsius)
                return before.hours()
                        + (reading.hours() - before.hours())
                                * (before.celsius() - celsius)
                                / (before.celsius() - reading.celsius());
            before = reading;
        }
        return Double.POSITIVE_INFINITY;
    }
}
