package dawnkettle.command;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/** A clock that stands until it is moved forward. */
final class RehearsalClock extends Clock {
    private final ZoneId zone;
    private Instant now;

    RehearsalClock(Instant now, ZoneId zone) {
        this.now = now;
        this.zone = zone;
    }

    void moveTo(Instant later) {
        if (later.isBefore(now)) throw new IllegalArgumentException("a clock is not moved back");
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
        return new RehearsalClock(now, other);
    }
}
