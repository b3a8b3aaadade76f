package dawnkettle.floor;

import java.util.List;
import java.util.function.IntPredicate;

/** What no run of a day can beat, proved from each stage, the hands and each job alone. */
public final class Bounds {
    private final Floor floor;
    private final Endings endings;

    private Bounds(Floor floor) {
        this.floor = floor;
        endings = new Endings(floor);
    }

    /**
     * The bound of a day. It holds for every run that places all jobs which can be placed at all; the finish besides holds
     * whatever the lateness.
     */
    public static Bound of(FloorDay day) {
        return of(new Floor(day));
    }

    static Bound of(Floor floor) {
        return new Bounds(floor).bound(false);
    }

    /** As {@link #of}, but the finish for runs in which nothing is late. */
    static Bound ofRunsInTime(Floor floor) {
        return new Bounds(floor).bound(true);
    }

    private Bound bound(boolean inTime) {
        Endings.Ending ending = inTime ? endings.inTime(job -> true) : endings.of(job -> true);
        return new Bound(weightedLateness(), ending.minute(), ending.binding());
    }

    /** The greater of what each due alone proves, summed, and what one due proves with all that leave before it. */
    private int weightedLateness() {
        List<Due> dues = floor.day.dues();
        int alone = 0;
        int together = 0;
        for (int due = 0; due < dues.size(); due++) {
            Due of = dues.get(due);
            int number = due;
            alone += of.weight() * late(of, job -> floor.jobs.isAwaitedBy(job, number));
            int lightest = dues.stream()
                    .filter(other -> other.minute() <= of.minute())
                    .mapToInt(Due::weight)
                    .min()
                    .orElse(0);
            together = Math.max(together, lightest * late(of, job -> floor.jobs.isAwaitedUntil(job, of.minute())));
        }
        return Math.max(alone, together);
    }

    private int late(Due due, IntPredicate awaited) {
        return Math.max(0, endings.of(awaited).minute() - due.minute());
    }
}
