package dawnkettle.floor;

/** A station whose places are all alike: only how many are taken counts, and the numbers are dealt at the end. */
final class PooledBench extends Bench {
    private final int places;
    private final int[] taken;
    private final long[] full;

    PooledBench(Floor floor, Station station) {
        super(floor, station);
        places = station.places();
        taken = new int[floor.span];
        full = Minutes.ofDay(floor.span);
    }

    @Override
    int fit(int operation, int notBefore, int latest, long[] tooFewHands) {
        return Minutes.freeRun(full, tooFewHands, notBefore, floor.minutes[operation]);
    }

    @Override
    void take(int operation, int place, int start, int end) {
        if (places == 1) {
            Minutes.take(full, start, end);
            return;
        }
        for (int minute = start; minute < end; minute++)
            if (++taken[minute] >= places) full[minute >>> 6] |= 1L << minute;
    }

    @Override
    void give(int operation, int place, int start, int end) {
        Minutes.free(full, start, end);
        if (places > 1) for (int minute = start; minute < end; minute++) taken[minute]--;
    }
}
