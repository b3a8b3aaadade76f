package dawnkettle.floor;

/** A station whose places each remember what stood there: for changeovers, and where something is frozen to its place. */
final class PlacedBench extends Bench {
    private final int[][] setup;
    private final Row[] rows;

    PlacedBench(Floor floor, Station station, int[][] setup) {
        super(floor, station);
        this.setup = setup;
        rows = new Row[station.places()];
        for (int place = 0; place < rows.length; place++) rows[place] = new Row(floor.span);
    }

    @Override
    int fit(int operation, int notBefore, int latest, long[] tooFewHands) {
        int best = Minutes.NEVER;
        for (int place = 0; place < rows.length && best > notBefore; place++) {
            int at = fitAt(rows[place], operation, notBefore, tooFewHands);
            if (at >= best) continue;
            best = at;
            found = place;
        }
        return best;
    }

    private int fitAt(Row row, int operation, int notBefore, long[] tooFewHands) {
        int minutes = floor.minutes[operation];
        int at = notBefore;
        while (true) {
            at = Minutes.freeRun(row.taken, tooFewHands, at, minutes);
            if (setup == null || at == Minutes.NEVER) return at;
            int clear = row.clearFrom(at, minutes, floor.family[operation], setup);
            if (clear == at) return at;
            at = clear;
        }
    }

    @Override
    void take(int operation, int place, int start, int end) {
        rows[place].add(floor.family[operation], start, end);
    }

    @Override
    void give(int operation, int place, int start, int end) {
        rows[place].remove(floor.family[operation], start, end);
    }

    @Override
    int changeovers() {
        int count = 0;
        if (setup != null) for (Row row : rows) count += row.changeovers(setup);
        return count;
    }
}
