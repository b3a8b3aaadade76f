package dawnkettle.floor;

/** What is left of a budget, in schedules built and in time. */
final class Allowance {
    private static final long NANOS_PER_MILLI = 1_000_000;
    /** The time is looked at once in so many schedules. */
    private static final int LOOK_EVERY = 16;

    private final long most;
    private final long started = System.nanoTime();
    private final long guardNanos;
    private long spent;
    private boolean stoppedEarly;

    Allowance(Budget budget) {
        most = budget.decodes();
        guardNanos = Math.min(budget.guardMillis(), Long.MAX_VALUE / NANOS_PER_MILLI) * NANOS_PER_MILLI;
    }

    /** True where one more schedule may be built; it then counts. */
    boolean spend() {
        if (stoppedEarly || spent >= most) return false;
        if (spent % LOOK_EVERY == 0 && System.nanoTime() - started >= guardNanos) {
            stoppedEarly = true;
            return false;
        }
        spent++;
        return true;
    }

    long spent() {
        return spent;
    }

    boolean stoppedEarly() {
        return stoppedEarly;
    }
}
