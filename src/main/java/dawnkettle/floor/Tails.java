package dawnkettle.floor;

import java.util.Arrays;
import java.util.function.IntPredicate;

/** How many minutes at least lie between the end of an operation and the end of the last job that something waits for. */
final class Tails {
    /** Nothing waits for it. */
    static final int NONE = -1;

    private final Floor floor;
    private final JobRows jobs;
    private final int[] ofJob;

    /** @param awaited the jobs whose end is waited for */
    Tails(Floor floor, IntPredicate awaited) {
        this.floor = floor;
        jobs = floor.jobs;
        ofJob = new int[jobs.size()];
        Arrays.fill(ofJob, NONE);
        for (int job = 0; job < jobs.size(); job++) if (awaited.test(job)) raise(job, 0);
    }

    private void raise(int job, int tail) {
        if (ofJob[job] >= tail) return;
        ofJob[job] = tail;
        if (!jobs.hasStarted(job)) for (int parent : jobs.parents[job]) raise(parent, tail + work(job));
    }

    private int work(int job) {
        int work = 0;
        for (int operation = jobs.first[job]; operation <= jobs.last(job); operation++)
            work += floor.minutes[operation];
        return work;
    }

    int ofJob(int job) {
        return ofJob[job];
    }

    int ofOperation(int job, int operation) {
        int tail = ofJob[job];
        for (int later = operation + 1; later <= jobs.last(job); later++) tail += floor.minutes[later];
        return tail;
    }
}
