package dawnkettle.floor;

/** The floor as it fills, and the placing of one job on it: the earliest start of every step that keeps all waits. */
final class Chain {
    final int[] start;
    final int[] end;
    final int[] station;
    final int[] place;
    final Bench[] benches;
    final Crew crew;
    private final Floor floor;
    private final JobRows jobs;
    private final int[] notBefore;
    private int foundStation;
    private int foundPlace;

    Chain(Floor floor) {
        this.floor = floor;
        jobs = floor.jobs;
        int operations = jobs.operations();
        start = new int[operations];
        end = new int[operations];
        station = new int[operations];
        place = new int[operations];
        notBefore = new int[operations];
        crew = new Crew(floor);
        benches = new Bench[floor.day.stations().size()];
        for (int number = 0; number < benches.length; number++) benches[number] = Bench.of(floor, number);
        for (int operation = 0; operation < operations; operation++) if (jobs.isFixed(operation)) fix(operation);
    }

    private void fix(int operation) {
        Placement fixed = jobs.fixed[operation];
        start[operation] = fixed.start();
        end[operation] = fixed.end();
        station[operation] = jobs.fixedStation[operation];
        place[operation] = fixed.place();
        take(operation);
    }

    /**
     * Places the open operations of a job. Every rule says "not before a minute that grows with the others", so that raising
     * the earlier step whenever the later one would wait too long ends at the earliest possible starts, or nowhere.
     *
     * @param released first minute for the first of them
     * @param endNotBefore the last operation is not to end before this
     */
    boolean place(int job, int released, int endNotBefore) {
        int first = jobs.open[job];
        int last = jobs.last(job);
        for (int operation = first; operation <= last; operation++) notBefore[operation] = 0;
        notBefore[last] = Math.max(0, endNotBefore - floor.minutes[last]);
        notBefore[first] = Math.max(notBefore[first], released);
        if (first > jobs.first[job]) notBefore[first] = Math.max(notBefore[first], end[first - 1]);
        int operation = first;
        while (operation <= last) {
            if (!fits(operation, first)) return false;
            if (waitsTooLong(operation, job)) {
                if (operation == first) return false;
                notBefore[operation - 1] =
                        start[operation] - floor.longestWait[operation] - floor.minutes[operation - 1];
                operation--;
            } else operation++;
        }
        for (operation = first; operation <= last; operation++) take(operation);
        return true;
    }

    private boolean fits(int operation, int first) {
        int from = notBefore[operation];
        if (operation > first) from = Math.max(from, end[operation - 1]);
        int before = floor.sameStageBefore[operation];
        if (before >= 0) from = Math.max(from, end[before] + floor.sameStageGap[operation]);
        int at = earliest(operation, from);
        if (at == Minutes.NEVER) return false;
        notBefore[operation] = at;
        start[operation] = at;
        end[operation] = at + floor.minutes[operation];
        station[operation] = foundStation;
        place[operation] = foundPlace;
        return true;
    }

    private boolean waitsTooLong(int operation, int job) {
        return operation > jobs.first[job] && start[operation] - end[operation - 1] > floor.longestWait[operation];
    }

    private int earliest(int operation, int from) {
        long[] tooFew = crew.tooFewFor(floor.hands[operation]);
        int best = Minutes.NEVER;
        for (int candidate : floor.stations[operation]) {
            Bench bench = benches[candidate];
            int at = bench.earliest(operation, from, tooFew);
            if (at >= best) continue;
            best = at;
            foundStation = candidate;
            foundPlace = bench.found;
            if (at == from) break;
        }
        return best;
    }

    void remove(int job) {
        for (int operation = jobs.open[job]; operation <= jobs.last(job); operation++) {
            if (end[operation] == start[operation]) continue;
            benches[station[operation]].give(operation, place[operation], start[operation], end[operation]);
            crew.give(floor.hands[operation], start[operation], end[operation]);
        }
    }

    private void take(int operation) {
        if (end[operation] == start[operation]) return;
        benches[station[operation]].take(operation, place[operation], start[operation], end[operation]);
        crew.take(floor.hands[operation], start[operation], end[operation]);
    }

    int changeovers() {
        int count = 0;
        for (Bench bench : benches) count += bench.changeovers();
        return count;
    }
}
