package dawnkettle.floor;

import java.util.Arrays;

/** Pieces of jobs laid onto the floor one after another in a given order, with a way back to any depth. */
final class Sequence {
    /** More pushing of parents than so many times the jobs is given up; the child is then left out. */
    private static final int PUSHES_PER_JOB = 4;

    private static final int ABSENT = -1;

    final Chain chain;
    private final JobRows jobs;
    private final Pieces pieces;
    private final Tally tally;
    private final boolean[] banned;
    private final int[] laid;
    private final int[] depthOf;
    private final boolean[] unplaced;
    private final int[] endNotBefore;
    private int depth;
    private int pushes;
    private long limitGrave = Long.MAX_VALUE;
    private long limitMild = Long.MAX_VALUE;

    long grave;
    long mild;

    /** @param floor the floor of the pieces */
    Sequence(Floor floor, Pieces pieces) {
        chain = new Chain(floor);
        jobs = floor.jobs;
        this.pieces = pieces;
        banned = new boolean[jobs.size()];
        tally = new Tally(jobs);
        laid = new int[jobs.size()];
        depthOf = new int[jobs.size()];
        unplaced = new boolean[jobs.size()];
        endNotBefore = new int[jobs.size()];
        Arrays.fill(depthOf, ABSENT);
        for (int job = 0; job < jobs.size(); job++) {
            if (jobs.hasStarted(job)) tally.addBegun(job, startOf(job));
            if (jobs.isOver(job)) tally.addOver(job, endOf(job));
        }
    }

    /** From now on {@link #lay} gives up as soon as it is sure to be worse than this. */
    void setLimit(long limitGrave, long limitMild) {
        this.limitGrave = limitGrave;
        this.limitMild = limitMild;
    }

    void clear() {
        backTo(0);
        Arrays.fill(endNotBefore, 0);
        pushes = 0;
    }

    /** As {@link #clear}, but what is laid already of the order's first {@code most} pieces stays. */
    void restart(int[] order, int most) {
        int same = 0;
        while (same < Math.min(depth, most) && laid[same] == order[same]) same++;
        if (pushes > 0) clear();
        else backTo(same);
    }

    /** Lays the jobs of the order from the depth reached on; false where it gave up. Sets {@link #grave} and {@link #mild}. */
    boolean lay(int[] order, int length) {
        while (depth < length) {
            int job = order[depth];
            int again = layOne(job);
            if (again >= 0) backTo(again);
            else if (isBeyond(tally.grave(), tally.mild(0))) return false;
        }
        grave = tally.grave();
        mild = tally.mild(chain.changeovers());
        return true;
    }

    private boolean isBeyond(long grave, long mild) {
        return grave > limitGrave || (grave == limitGrave && mild > limitMild);
    }

    /** Lays a job and answers -1, or pushes back a parent and answers its depth, from which to lay again. */
    private int layOne(int job) {
        int released = released(job);
        boolean placed = !banned[job] && released != Minutes.NEVER && chain.place(job, released, endNotBefore[job]);
        if (placed && !jobs.hasStarted(job) && waitsTooLong(job)) {
            int again = pushParents(job);
            chain.remove(job);
            if (again >= 0) return again;
            placed = false;
        }
        unplaced[job] = !placed;
        depthOf[job] = depth;
        laid[depth++] = job;
        if (placed) tally.addPlaced(job, startOf(job), endOf(job));
        else tally.addUnplaced(pieces.goesOn(job) && unplaced[job - 1]);
        return -1;
    }

    /** The end of what it is made from; never, where that has no place. A parent not yet laid is not waited for. */
    private int released(int job) {
        int released = jobs.release[job];
        if (jobs.hasStarted(job)) return released;
        for (int parent : jobs.parents[job]) {
            if (!isThere(parent)) continue;
            if (unplaced[parent]) return Minutes.NEVER;
            released = Math.max(released, endOf(parent));
        }
        return released;
    }

    private boolean isThere(int job) {
        return jobs.isOver(job) || depthOf[job] != ABSENT;
    }

    private boolean waitsTooLong(int job) {
        for (int number = 0; number < jobs.parents[job].length; number++) if (lack(job, number) > 0) return true;
        return false;
    }

    /** Minutes by which the parent ends too early for the job to start in time. */
    private int lack(int job, int number) {
        int parent = jobs.parents[job][number];
        if (!isThere(parent)) return 0;
        return startOf(job) - endOf(parent) - jobs.parentWaits[job][number];
    }

    /** The least depth of the parents that are to end later, or -1 where one cannot. */
    private int pushParents(int job) {
        if (++pushes > PUSHES_PER_JOB * jobs.size()) return -1;
        int again = depth;
        for (int number = 0; number < jobs.parents[job].length; number++) {
            if (lack(job, number) <= 0) continue;
            int parent = jobs.parents[job][number];
            if (jobs.isOver(parent)) return -1;
            endNotBefore[parent] = endOf(parent) + lack(job, number);
            again = Math.min(again, depthOf[parent]);
        }
        return again;
    }

    void backTo(int to) {
        while (depth > to) {
            int job = laid[--depth];
            if (!unplaced[job]) chain.remove(job);
            unplaced[job] = false;
            depthOf[job] = ABSENT;
        }
        tally.backTo(to);
    }

    /** As {@link #backTo}, for an order that is laid up to the depth and had so many pushes then. */
    void backTo(int to, int pushesThen, int[] order) {
        if (pushes == pushesThen) {
            backTo(to);
            return;
        }
        clear();
        setLimit(Long.MAX_VALUE, Long.MAX_VALUE);
        lay(order, to);
    }

    int pushes() {
        return pushes;
    }

    /** True where some piece of the whole job has no place. */
    boolean isUnplaced(int whole) {
        for (int piece = pieces.first(whole); piece <= pieces.last(whole); piece++) if (unplaced[piece]) return true;
        return false;
    }

    /** Lays an order so that no job stands in part: what cannot be placed whole is left out, and all is laid anew. */
    void layWhole(int[] order) {
        Arrays.fill(banned, false);
        setLimit(Long.MAX_VALUE, Long.MAX_VALUE);
        do {
            clear();
            lay(order, order.length);
        } while (banPartlyPlaced());
        Arrays.fill(banned, false);
    }

    private boolean banPartlyPlaced() {
        boolean any = false;
        for (int whole = 0; whole < pieces.jobs(); whole++) {
            if (!isUnplaced(whole)) continue;
            for (int piece = pieces.first(whole); piece <= pieces.last(whole); piece++) {
                any |= !unplaced[piece] && !jobs.isOver(piece);
                banned[piece] = true;
            }
        }
        return any;
    }

    int startOf(int job) {
        return chain.start[jobs.first[job]];
    }

    int endOf(int job) {
        return chain.end[jobs.last(job)];
    }
}
