package dawnkettle.shop;

import java.time.LocalTime;

/** A stretch of local time on each making day, half open. */
public record Opening(LocalTime from, LocalTime until) {
    public Opening {
        if (!from.isBefore(until)) throw new IllegalArgumentException("an opening runs forward within one day");
    }
}
