package dawnkettle.floor;

/** The changeovers of a day as a table for each station. */
final class Setups {
    private final FloorDay day;
    private final Codes families;

    Setups(FloorDay day, Codes families) {
        this.day = day;
        this.families = families;
    }

    /** Minutes by station, family before and family after; null for a station that needs none. */
    int[][][] byStation() {
        var codes = new Codes("station");
        day.stations().forEach(station -> codes.addNew(station.code()));
        var tables = new int[day.stations().size()][][];
        for (Changeover changeover : day.changeovers()) {
            int station = codes.number(changeover.station(), "a changeover");
            if (!day.stations().get(station).isShared() && changeover.minutes() > 0) note(tables, station, changeover);
        }
        return tables;
    }

    private void note(int[][][] tables, int station, Changeover changeover) {
        int from = families.find(changeover.fromFamily());
        int to = families.find(changeover.toFamily());
        if (from < 0 || to < 0) return;
        if (tables[station] == null) tables[station] = new int[families.size()][families.size()];
        tables[station][from][to] = Math.max(tables[station][from][to], changeover.minutes());
    }
}
