package dawnkettle.night;

import java.time.Duration;
import java.time.Instant;
import java.util.function.LongSupplier;

/** Looks at each tick whether the clock went on as the machine's own count of seconds did. */
public final class ClockWatch {
    /**
     * A step of the clock beyond this is a jump; drift corrected in small steps stays below it (common practice,
     * no source).
     */
    private static final Duration MOST = Duration.ofSeconds(90);

    private final Office office;
    private final ClockGate gate;
    private final LongSupplier nanos;
    private Instant wall;
    private long count;

    /** @param nanos a count of nanoseconds that nobody sets */
    public ClockWatch(Office office, LongSupplier nanos) {
        this.office = office;
        this.gate = new ClockGate(office);
        this.nanos = nanos;
        this.wall = office.now();
        this.count = nanos.getAsLong();
    }

    /** Notes a jump of more than a minute and a half either way, as an hour that was set or a machine that slept. */
    public void look() {
        Instant now = office.now();
        long counted = nanos.getAsLong();
        Duration apart = Duration.between(wall, now).minusNanos(counted - count);
        wall = now;
        count = counted;
        if (apart.abs().compareTo(MOST) > 0) gate.jumped(apart);
    }
}
