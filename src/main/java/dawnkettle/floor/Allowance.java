package dawnkettle.floor;

import java.util.List;
import java.util.stream.IntStream;

/** What is left of a budget, in schedules built and in time. */
final class Allowance {
    private static final long NANOS_PER_MILLI = 1_000_000;
    /** The time is looked at once in so many schedules. */
    private static final int LOOK_EVERY = 16;

    private final long most;
    private final long started;
    private final long guardNanos;
    private final Runnable moving;
    private long until;
    private long spent;
    private boolean stoppedEarly;

    Allowance(Budget budget) {
        this(budget, budget.decodes(), System.nanoTime());
    }

    /**
     * @param most schedules at most
     * @param started when the budget's time began to run
     */
    private Allowance(Budget budget, long most, long started) {
        this.most = most;
        until = most;
        this.started = started;
        moving = budget.moving();
        guardNanos = Math.min(budget.guardMillis(), Long.MAX_VALUE / NANOS_PER_MILLI) * NANOS_PER_MILLI;
    }

    /** A budget dealt out to some searches that share its time. */
    static List<Allowance> shares(Budget budget, int searches) {
        long started = System.nanoTime();
        return IntStream.range(0, searches)
                .mapToObj(share -> new Allowance(budget, (budget.decodes() + searches - 1 - share) / searches, started))
                .toList();
    }

    /** True where one more schedule may be built; it then counts. */
    boolean spend() {
        if (stoppedEarly || spent >= until) return false;
        if (spent % LOOK_EVERY == 0 && isTimeUp()) {
            stoppedEarly = true;
            return false;
        }
        spent++;
        return true;
    }

    private boolean isTimeUp() {
        moving.run();
        return System.nanoTime() - started >= guardNanos;
    }

    /** Lets no more than so many of what is left be spent for now. */
    void open(long decodes) {
        until = Math.min(most, spent + decodes);
    }

    long left() {
        return stoppedEarly ? 0 : most - spent;
    }

    long spent() {
        return spent;
    }

    boolean stoppedEarly() {
        return stoppedEarly;
    }
}
