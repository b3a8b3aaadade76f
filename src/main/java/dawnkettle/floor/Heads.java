package dawnkettle.floor;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How early each operation can start at best, were its job and what that is made from alone with what is fixed: no run starts
 * it earlier. Changeovers are left out, because a job in between might shorten them.
 */
final class Heads {
    private final Chain alone;
    private final boolean[] canBePlaced;

    Heads(FloorDay day) {
        var floor =
                new Floor(new FloorDay(day.stations(), day.hands(), List.of(), day.dues(), day.jobs(), day.horizon()));
        JobRows jobs = floor.jobs;
        alone = new Chain(floor);
        canBePlaced = new boolean[jobs.size()];
        IntStream.range(0, jobs.size())
                .boxed()
                .sorted(Comparator.comparingInt(floor.lineage::rank))
                .forEach(job -> place(jobs, job));
    }

    private void place(JobRows jobs, int job) {
        canBePlaced[job] = true;
        if (jobs.isOver(job)) return;
        int released = jobs.release[job];
        if (!jobs.hasStarted(job))
            for (int parent : jobs.parents[job]) {
                canBePlaced[job] &= canBePlaced[parent];
                released = Math.max(released, alone.end[jobs.last(parent)]);
            }
        if (!canBePlaced[job]) return;
        canBePlaced[job] = alone.place(job, released, 0);
        if (canBePlaced[job]) alone.remove(job);
    }

    int earliestStart(int operation) {
        return alone.start[operation];
    }

    int earliestEnd(int operation) {
        return alone.end[operation];
    }

    /** False for a job that no run can place, and for what is made from it. */
    boolean canBePlaced(int job) {
        return canBePlaced[job];
    }
}
