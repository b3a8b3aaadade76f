package dawnkettle.mail;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/**
 * A day by station, to be drawn as bars over the hours.
 *
 * @param name of the picture, as a file name without its ending
 * @param lanes from top to bottom
 * @param marks moments that a line shows through all lanes, as a van's departure
 * @param alternative what it shows, in words
 */
public record DayStrip(
        String name, String title, ZoneId zone, List<Lane> lanes, List<Moment> marks, String alternative) {
    public DayStrip {
        lanes = List.copyOf(lanes);
        marks = List.copyOf(marks);
        if (lanes.isEmpty()) throw new IllegalArgumentException("a strip shows at least one lane");
    }

    /** A station and when it works. */
    public record Lane(String name, List<Bar> bars) {
        public Lane {
            bars = List.copyOf(bars);
        }
    }

    /** From when until when. */
    public record Bar(Instant from, Instant to) {}

    /**
     * @param name short, as a route's code
     * @param late whether it is later than promised
     */
    public record Moment(String name, Instant at, boolean late) {}
}
