package dawnkettle.floor;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What a stage or the crew has to give over the day, after what is fixed, with how many units at most at once. */
final class Room {
    static final String HANDS = "hands";

    final String name;
    private final long[] until;
    private final long most;
    private final int[][] setup;
    private final Map<Integer, Integer> paths = new HashMap<>();

    private Room(String name, long[] has, int[][] setup) {
        this.name = name;
        this.setup = setup;
        until = new long[has.length + 1];
        long highest = 0;
        for (int minute = 0; minute < has.length; minute++) {
            long units = Math.max(0, has[minute]);
            highest = Math.max(highest, units);
            until[minute + 1] = until[minute] + units;
        }
        most = highest;
    }

    static Room ofCrew(Floor floor) {
        long[] has = new long[floor.span];
        for (int minute = 0; minute < has.length; minute++) has[minute] = floor.halves[minute];
        for (int operation = 0; operation < floor.jobs.operations(); operation++)
            if (floor.jobs.isFixed(operation)) subtract(has, floor.jobs.fixed[operation], floor.hands[operation]);
        return new Room(HANDS, has, null);
    }

    /** The places, or the load, of some stations together. */
    static Room ofStage(Floor floor, String name, int[] stations) {
        long[] has = new long[floor.span];
        boolean anyFixed = false;
        for (int number : stations) {
            Station station = floor.day.stations().get(number);
            anyFixed |= floor.hasFixed[number];
            for (Window open : floor.windowsOf(station))
                for (int minute = open.fromInclusive(); minute < open.untilExclusive(); minute++)
                    has[minute] += station.isShared() ? station.capacity() : station.places();
        }
        for (int operation = 0; operation < floor.jobs.operations(); operation++)
            if (floor.jobs.isFixed(operation) && contains(stations, floor.jobs.fixedStation[operation]))
                subtract(has, floor.jobs.fixed[operation], floor.unitsAt(operation, stations[0]));
        return new Room(name, has, anyFixed ? null : onlyPlaceSetup(floor, stations));
    }

    private static boolean contains(int[] numbers, int wanted) {
        for (int number : numbers) if (number == wanted) return true;
        return false;
    }

    private static void subtract(long[] has, Placement fixed, long units) {
        for (int minute = fixed.start(); minute < fixed.end(); minute++) has[minute] -= units;
    }

    private static int[][] onlyPlaceSetup(Floor floor, int[] stations) {
        boolean onePlace =
                stations.length == 1 && floor.day.stations().get(stations[0]).places() == 1;
        return onePlace && floor.setups[stations[0]] != null ? shortest(floor.setups[stations[0]]) : null;
    }

    /** Changeovers, or a shorter way round through other families. */
    private static int[][] shortest(int[][] setup) {
        int[][] way = new int[setup.length][];
        for (int from = 0; from < setup.length; from++) way[from] = setup[from].clone();
        for (int over = 0; over < setup.length; over++)
            for (int from = 0; from < setup.length; from++)
                for (int to = 0; to < setup.length; to++)
                    way[from][to] = Math.min(way[from][to], way[from][over] + way[over][to]);
        return way;
    }

    /** Units at once at most. */
    long most() {
        return most;
    }

    /** The first minute by which so many unit minutes can have been given from the given one on; never, where the day has not so many. */
    int doneBy(int from, long unitMinutes) {
        long wanted = until[from] + unitMinutes;
        if (until[until.length - 1] < wanted) return Minutes.NEVER;
        int low = from;
        int high = until.length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (until[middle] >= wanted) high = middle;
            else low = middle + 1;
        }
        return low;
    }

    boolean changesOver() {
        return setup != null && setup.length < Integer.SIZE;
    }

    /** Minutes between families, where it changes over. */
    int[][] setup() {
        return setup;
    }

    int families() {
        return setup.length;
    }

    /** Minutes from the first start on the only place to the end of the last job, families in the best order. */
    int shortestOrder(List<List<FamilyOrder.Part>> families) {
        return new FamilyOrder(setup, families).shortest();
    }

    /** The first minute from the given one on that the numbers of jobs done by family do not rule out. */
    int endByCounts(List<Workload.Want> wants, int placesBefore, int minute) {
        return new FamilyCounts(setup, wants, placesBefore).endFrom(minute);
    }

    /** Minutes of changeover at least, for the families of a bit set on the only place. */
    int changeoverMinutes(int families) {
        return paths.computeIfAbsent(families, set -> new FamilyPath(setup).shortest(set));
    }
}
