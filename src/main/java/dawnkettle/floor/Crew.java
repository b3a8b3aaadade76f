package dawnkettle.floor;

import java.util.Arrays;

/** The half people of the day, minute by minute: how many are free, and where too few are for an operation. */
final class Crew {
    private final int[] free;
    private final int[] levels;
    private final long[][] tooFew;
    private final long[] nobodyNeeded;

    Crew(Floor floor) {
        free = floor.halves.clone();
        levels = Arrays.stream(floor.hands)
                .filter(h -> h > 0)
                .distinct()
                .sorted()
                .toArray();
        tooFew = new long[levels.length][];
        for (int level = 0; level < levels.length; level++) {
            tooFew[level] = Minutes.ofDay(free.length);
            for (int minute = 0; minute < free.length; minute++)
                if (free[minute] < levels[level]) Minutes.take(tooFew[level], minute, minute + 1);
        }
        nobodyNeeded = Minutes.ofDay(free.length);
    }

    /** The minutes in which fewer than so many halves are free. */
    long[] tooFewFor(int halves) {
        if (halves <= 0) return nobodyNeeded;
        int level = 0;
        while (levels[level] != halves) level++;
        return tooFew[level];
    }

    void take(int halves, int fromInclusive, int untilExclusive) {
        if (halves <= 0) return;
        for (int minute = fromInclusive; minute < untilExclusive; minute++) {
            int before = free[minute];
            int after = free[minute] = before - halves;
            for (int level = 0; level < levels.length; level++)
                if (levels[level] > after && levels[level] <= before) tooFew[level][minute >>> 6] |= 1L << minute;
        }
    }

    void give(int halves, int fromInclusive, int untilExclusive) {
        if (halves <= 0) return;
        for (int minute = fromInclusive; minute < untilExclusive; minute++) {
            int before = free[minute];
            int after = free[minute] = before + halves;
            for (int level = 0; level < levels.length; level++)
                if (levels[level] > before && levels[level] <= after) tooFew[level][minute >>> 6] &= ~(1L << minute);
        }
    }

    /** Free halves of a minute; below zero where what has happened took more than there were. */
    int freeAt(int minute) {
        return free[minute];
    }
}
