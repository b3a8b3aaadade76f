package dawnkettle.floor;

import java.util.Arrays;

/** A station that jobs share by load, such as a bath that holds so many grams. */
final class SharedBench extends Bench {
    private final long capacity;
    private final long[] free;

    SharedBench(Floor floor, Station station) {
        super(floor, station);
        capacity = station.capacity();
        free = new long[floor.span];
        Arrays.fill(free, capacity);
    }

    @Override
    int fit(int operation, int notBefore, int latest, long[] tooFewHands) {
        long load = floor.loads[operation];
        if (load > capacity) return Minutes.NEVER;
        int minutes = floor.minutes[operation];
        for (int at = notBefore; at <= latest; ) {
            at = Minutes.freeRun(tooFewHands, tooFewHands, at, minutes);
            if (at > latest) break;
            int full = lastFull(at, at + minutes, load);
            if (full < at) return at;
            at = full + 1;
        }
        return Minutes.NEVER;
    }

    /** Looked for from the end, so that a full minute is leapt over in one step. */
    private int lastFull(int start, int end, long load) {
        int minute = end - 1;
        while (minute >= start && free[minute] >= load) minute--;
        return minute;
    }

    @Override
    void take(int operation, int place, int start, int end) {
        for (int minute = start; minute < end; minute++) free[minute] -= floor.loads[operation];
    }

    @Override
    void give(int operation, int place, int start, int end) {
        for (int minute = start; minute < end; minute++) free[minute] += floor.loads[operation];
    }
}
