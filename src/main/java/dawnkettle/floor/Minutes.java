package dawnkettle.floor;

/** Sets of minutes as bits, and the search for a stretch in which none is taken. */
final class Minutes {
    /** No minute of the day. */
    static final int NEVER = Integer.MAX_VALUE;

    private Minutes() {}

    /** Bits for a day of so many minutes, all free. */
    static long[] ofDay(int minutes) {
        return new long[(minutes + 63) / 64 + 1];
    }

    /** The first minute from which {@code length} minutes are free in both sets. */
    static int freeRun(long[] one, long[] other, int fromInclusive, int length) {
        int end = one.length << 6;
        int at = fromInclusive;
        while (at <= end - length) {
            long taken = (one[at >>> 6] | other[at >>> 6]) >>> at;
            if ((taken & 1) != 0) {
                at += Long.numberOfTrailingZeros(~taken);
                continue;
            }
            int next = nextTaken(one, other, at, at + length);
            if (next >= at + length) return at;
            at = next;
        }
        return NEVER;
    }

    private static int nextTaken(long[] one, long[] other, int fromInclusive, int untilExclusive) {
        int word = fromInclusive >>> 6;
        long taken = (one[word] | other[word]) >>> fromInclusive;
        if (taken != 0) return fromInclusive + Long.numberOfTrailingZeros(taken);
        for (int at = (word + 1) << 6; at < untilExclusive; at += 64) {
            taken = one[at >>> 6] | other[at >>> 6];
            if (taken != 0) return at + Long.numberOfTrailingZeros(taken);
        }
        return untilExclusive;
    }

    static void take(long[] bits, int fromInclusive, int untilExclusive) {
        for (int at = fromInclusive; at < untilExclusive; ) {
            int stop = Math.min(untilExclusive, (at | 63) + 1);
            bits[at >>> 6] |= stretch(at, stop);
            at = stop;
        }
    }

    static void free(long[] bits, int fromInclusive, int untilExclusive) {
        for (int at = fromInclusive; at < untilExclusive; ) {
            int stop = Math.min(untilExclusive, (at | 63) + 1);
            bits[at >>> 6] &= ~stretch(at, stop);
            at = stop;
        }
    }

    /** Ones for the minutes of one word. */
    private static long stretch(int fromInclusive, int untilExclusive) {
        return (-1L >>> (64 - (untilExclusive - fromInclusive))) << fromInclusive;
    }
}
