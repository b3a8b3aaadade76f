package dawnkettle.floor;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** A day's floor as arrays, made once: operations are numbered through all jobs, a job's in a row. */
final class Floor {
    final FloorDay day;
    final JobRows jobs;
    final Lineage lineage;
    final int[] minutes;
    final int[] hands;
    final int[] longestWait;
    final long[] loads;
    final int[] family;
    /** Stations by operation; none where the day has none for its stage. */
    final int[][] stations;
    /** An earlier operation of the same job after which the same stage must first be changed over, or -1, and for how long. */
    final int[] sameStageBefore;

    final int[] sameStageGap;
    final int[][][] setups;
    final boolean[] hasFixed;
    final int[] halves;
    /** Minutes of every timeline: the horizon, or more where something fixed lies beyond. */
    final int span;

    Floor(FloorDay day) {
        this.day = day;
        jobs = new JobRows(day);
        lineage = new Lineage(jobs);
        int operations = jobs.operations();
        minutes = new int[operations];
        hands = new int[operations];
        longestWait = new int[operations];
        loads = new long[operations];
        family = new int[operations];
        stations = new int[operations][];
        sameStageBefore = new int[operations];
        sameStageGap = new int[operations];
        span = Math.max(day.horizon(), jobs.lastFixedEnd()) + 1;
        halves = halves();
        var families = new Codes("family");
        day.jobs().forEach(job -> families.add(job.family()));
        setups = new Setups(day, families).byStation();
        hasFixed = new boolean[day.stations().size()];
        for (int job = 0; job < jobs.size(); job++)
            fill(job, families.add(day.jobs().get(job).family()));
    }

    private void fill(int job, int itsFamily) {
        List<Operation> operations = day.jobs().get(job).operations();
        for (int step = 0; step < operations.size(); step++) {
            int operation = jobs.first[job] + step;
            Operation of = operations.get(step);
            minutes[operation] = of.minutes();
            hands[operation] = of.minutes() > 0 ? of.halfHands() : 0;
            longestWait[operation] = of.longestWait();
            loads[operation] = of.load();
            family[operation] = itsFamily;
            stations[operation] = stationsOf(of.stage());
            findSameStageBefore(operation, jobs.first[job]);
            if (jobs.isFixed(operation)) hasFixed[jobs.fixedStation[operation]] = true;
        }
    }

    private void findSameStageBefore(int operation, int first) {
        sameStageBefore[operation] = -1;
        for (int station : stations[operation])
            if (setups[station] != null)
                sameStageGap[operation] = Math.max(sameStageGap[operation], ownGap(station, operation));
        if (sameStageGap[operation] == 0) return;
        for (int before = first; before < operation; before++)
            if (stations[before].length > 0 && stations[before][0] == stations[operation][0] && minutes[before] > 0)
                sameStageBefore[operation] = before;
    }

    private int ownGap(int station, int operation) {
        return setups[station][family[operation]][family[operation]];
    }

    int[] stationsOf(String stage) {
        var all = day.stations();
        return IntStream.range(0, all.size())
                .filter(station -> all.get(station).stage().equals(stage))
                .toArray();
    }

    /** What an operation takes of a station of its stage: a place, or its load. */
    long unitsAt(int operation, int station) {
        return day.stations().get(station).isShared() ? loads[operation] : 1;
    }

    /** People of overlapping windows add up. */
    private int[] halves() {
        int[] there = new int[span];
        for (Hands hands : day.hands())
            for (int minute = hands.window().fromInclusive();
                    minute < Math.min(span, hands.window().untilExclusive());
                    minute++) there[minute] += hands.halves();
        return there;
    }

    /** A station's windows by their start, as far as the horizon lets them count. */
    List<Window> windowsOf(Station station) {
        return station.open().stream()
                .filter(open -> open.fromInclusive() < day.horizon())
                .map(open -> new Window(open.fromInclusive(), Math.min(open.untilExclusive(), day.horizon())))
                .sorted(Comparator.comparingInt(Window::fromInclusive))
                .toList();
    }
}
