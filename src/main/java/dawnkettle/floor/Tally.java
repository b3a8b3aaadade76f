package dawnkettle.floor;

/** The score as it mounts from job to job, kept for every depth so that it can be taken back. */
final class Tally {
    private static final int GRAVE_SHIFT = 40;
    private static final int LATE_SHIFT = 31;
    private static final int FINISH_SHIFT = 13;

    private final JobRows jobs;
    private final int dues;
    private final long[] grave;
    private final long[] late;
    private final int[] finish;
    private final int[] dueEnds;
    private int depth;

    Tally(JobRows jobs) {
        this.jobs = jobs;
        dues = jobs.dueMinute.length;
        grave = new long[jobs.size() + 1];
        late = new long[jobs.size() + 1];
        finish = new int[jobs.size() + 1];
        dueEnds = new int[(jobs.size() + 1) * dues];
        finish[0] = jobs.lastFixedEnd();
    }

    /** Counts in, before anything is placed, when a job began that is under way or over. */
    void addBegun(int job, int start) {
        grave[0] += Math.max(0, start - jobs.latestStart[job]);
    }

    /** Counts in, before anything is placed, when a job ended that is over. */
    void addOver(int job, int end) {
        addEnd(job, end, 0);
    }

    /** Adds a job that now stands. */
    void addPlaced(int job, int start, int end) {
        int to = copyDepth();
        if (!jobs.hasStarted(job)) grave[to] += Math.max(0, start - jobs.latestStart[job]);
        addEnd(job, end, to);
    }

    private void addEnd(int job, int end, int to) {
        if (end > finish[to]) finish[to] = end;
        for (int due : jobs.dues[job]) {
            int before = dueEnds[to * dues + due];
            if (end <= before) continue;
            dueEnds[to * dues + due] = end;
            late[to] += (long) jobs.dueWeight[due] * (over(due, end) - over(due, before));
        }
    }

    private int over(int due, int end) {
        return Math.max(0, end - jobs.dueMinute[due]);
    }

    /** Adds a job for which there is no room; {@code known} where another piece of the same job has told so already. */
    void addUnplaced(boolean known) {
        grave[copyDepth()] += known ? 0 : 1L << GRAVE_SHIFT;
    }

    private int copyDepth() {
        int to = depth + 1;
        grave[to] = grave[depth];
        late[to] = late[depth];
        finish[to] = finish[depth];
        for (int due = 0; due < dues; due++) dueEnds[to * dues + due] = dueEnds[depth * dues + due];
        return depth = to;
    }

    void backTo(int depth) {
        this.depth = depth;
    }

    /** Unplaced jobs and spoilt minutes in one number that orders as they do. */
    long grave() {
        return grave[depth];
    }

    /** Lateness, finish and changeovers in one number that orders as they do. */
    long mild(int changeovers) {
        return (late[depth] << LATE_SHIFT) | ((long) finish[depth] << FINISH_SHIFT) | changeovers;
    }

    static Score score(long grave, long mild) {
        return new Score(
                Math.toIntExact(grave >>> GRAVE_SHIFT),
                Math.toIntExact(grave & ((1L << GRAVE_SHIFT) - 1)),
                Math.toIntExact(mild >>> LATE_SHIFT),
                Math.toIntExact((mild & ((1L << LATE_SHIFT) - 1)) >>> FINISH_SHIFT),
                Math.toIntExact(mild & ((1L << FINISH_SHIFT) - 1)));
    }

    /** A smooth cost: how much worse a plan is, for the search to weigh. */
    static double cost(long grave, long mild) {
        if (grave == Long.MAX_VALUE) return Double.POSITIVE_INFINITY; // nothing could be laid at all
        Score score = score(grave, mild);
        return score.unplaced() * 20_000.0
                + score.spoiltMinutes() * 50.0
                + score.weightedLateness() * 5.0
                + score.finish()
                + score.changeovers() * 0.05;
    }
}
