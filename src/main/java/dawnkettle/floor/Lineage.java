package dawnkettle.floor;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Who descends from whom, through any number of generations. */
final class Lineage {
    private final JobRows jobs;
    private final int[][] ancestors;
    private final int[][] descendants;

    Lineage(JobRows jobs) {
        this.jobs = jobs;
        ancestors = new int[jobs.size()][];
        descendants = new int[jobs.size()][];
        for (int job = 0; job < jobs.size(); job++) {
            ancestors[job] = reached(job, jobs.parents);
            descendants[job] = reached(job, jobs.children);
            int itself = job;
            if (Arrays.stream(ancestors[job]).anyMatch(ancestor -> ancestor == itself))
                throw new IllegalArgumentException(
                        "job \"" + jobs.all.get(job).id() + "\" is made from itself; cut the ring of its parents");
        }
    }

    private int[] reached(int from, int[][] links) {
        var seen = new boolean[jobs.size()];
        spread(from, links, seen);
        return IntStream.range(0, seen.length).filter(job -> seen[job]).toArray();
    }

    private static void spread(int from, int[][] links, boolean[] seen) {
        for (int to : links[from]) {
            if (seen[to]) continue;
            seen[to] = true;
            spread(to, links, seen);
        }
    }

    int size() {
        return ancestors.length;
    }

    int[] ancestors(int job) {
        return ancestors[job];
    }

    int[] descendants(int job) {
        return descendants[job];
    }

    /** How many jobs it descends from: less for a parent than for its child. */
    int rank(int job) {
        return ancestors[job].length;
    }
}
