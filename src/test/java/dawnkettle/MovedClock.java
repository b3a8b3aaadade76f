package dawnkettle;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/** A clock that stands until the test moves it. */
final class MovedClock extends Clock {
    private final ZoneId zone;
    private Instant now;

    MovedClock(Instant now, ZoneId zone) {
        this.now = now;
        this.zone = zone;
    }

    void moveTo(Instant later) {
        now = later;
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return zone;
    }

    @Override
    public Clock withZone(ZoneId other) {
        throw new UnsupportedOperationException("the shop has one zone");
    }
}
