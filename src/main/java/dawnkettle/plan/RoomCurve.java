package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * How warm a room stood and stands through the hours: even between two readings, before the first and after the last as
 * they say. One reading is a steady room.
 */
public record RoomCurve(List<Reading> readings) {
    /** How warm it was at an instant. */
    public record Reading(Instant at, Celsius celsius) {}

    public RoomCurve {
        readings = List.copyOf(readings);
        if (readings.isEmpty()) throw new IllegalArgumentException("a room's curve needs a reading");
        for (int i = 1; i < readings.size(); i++)
            if (!readings.get(i).at().isAfter(readings.get(i - 1).at()))
                throw new IllegalArgumentException("the reading at "
                        + readings.get(i).at() + " is not later than the one before; put them in order");
    }

    /** A room that stands at one temperature. */
    public static RoomCurve steady(Celsius room) {
        return new RoomCurve(List.of(new Reading(Instant.EPOCH, room)));
    }

    public boolean isSteady() {
        return readings.size() == 1;
    }

    /** From when on it is taken to stand at one temperature. */
    public Instant steadyFrom() {
        return readings.get(readings.size() - 1).at();
    }

    /** How warm it is after the last reading. */
    public Celsius last() {
        return readings.get(readings.size() - 1).celsius();
    }

    /** Degrees at an instant. */
    public double at(Instant instant) {
        int low = 0;
        int high = readings.size() - 1;
        if (!instant.isAfter(readings.get(0).at()))
            return readings.get(0).celsius().degrees();
        if (!instant.isBefore(readings.get(high).at())) return last().degrees();
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (readings.get(middle).at().isAfter(instant)) high = middle;
            else low = middle;
        }
        return between(readings.get(low), readings.get(high), instant);
    }

    private static double between(Reading before, Reading after, Instant instant) {
        double part = (double) Duration.between(before.at(), instant).toSeconds()
                / Duration.between(before.at(), after.at()).toSeconds();
        return before.celsius().degrees()
                + part * (after.celsius().degrees() - before.celsius().degrees());
    }
}
