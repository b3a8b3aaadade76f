package dawnkettle.floor;

/** One station's day as it fills up. */
abstract class Bench {
    final Floor floor;
    private final int[] opens;
    private final int[] closes;

    /** The place of the last {@link #earliest} answer. */
    int found;

    Bench(Floor floor, Station station) {
        this.floor = floor;
        var open = floor.windowsOf(station);
        opens = open.stream().mapToInt(Window::fromInclusive).toArray();
        closes = open.stream().mapToInt(Window::untilExclusive).toArray();
    }

    static Bench of(Floor floor, int number) {
        Station station = floor.day.stations().get(number);
        if (station.isShared()) return new SharedBench(floor, station);
        if (floor.setups[number] == null && !floor.hasFixed[number]) return new PooledBench(floor, station);
        return new PlacedBench(floor, station, floor.setups[number]);
    }

    /** The first minute, not before the given one, at which the operation fits, people included; sets {@link #found}. */
    final int earliest(int operation, int notBefore, long[] tooFewHands) {
        int minutes = floor.minutes[operation];
        int at = notBefore;
        for (int window = 0; window < opens.length; window++) {
            if (opens[window] > at) at = opens[window];
            int latest = closes[window] - minutes;
            if (at > latest) continue;
            int fits = minutes == 0 ? at : fit(operation, at, latest, tooFewHands);
            if (fits <= latest) return fits;
        }
        return Minutes.NEVER;
    }

    /** As {@link #earliest}, but knowing nothing of windows; anything beyond {@code latest} means no. */
    abstract int fit(int operation, int notBefore, int latest, long[] tooFewHands);

    abstract void take(int operation, int place, int start, int end);

    abstract void give(int operation, int place, int start, int end);

    int changeovers() {
        return 0;
    }
}
