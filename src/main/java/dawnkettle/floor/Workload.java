package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The operations that want one room, and how early the last job behind them can end: the subset bound of Carlier (1987) for
 * identical machines, with units instead of machines, and the same counted in the minutes that windows and breaks leave.
 */
final class Workload {
    /** Of the earliest starts as thresholds so many are tried; each alone is a valid bound. */
    private static final int THRESHOLDS = 96;

    /** What an operation wants: from when, how long, how many units, and how long the job goes on behind it. */
    record Want(int head, int minutes, long units, int tail, int family) {}

    private final Room room;
    private final List<Want> wants = new ArrayList<>();

    Workload(Room room) {
        this.room = room;
    }

    void add(Want want) {
        wants.add(want);
    }

    int endAtLeast() {
        wants.sort(Comparator.comparingInt(Want::tail).reversed());
        int[] heads = wants.stream().mapToInt(Want::head).distinct().sorted().toArray();
        int step = Math.max(1, heads.length / THRESHOLDS);
        int end = 0;
        for (int at = 0; at < heads.length; at += step) end = Math.max(end, endAtLeast(heads[at]));
        return end;
    }

    /** For all sets of operations that start no earlier than the threshold and have at least some tail. */
    private int endAtLeast(int threshold) {
        var subset = new Subset(room);
        int end = 0;
        for (Want want : wants) {
            if (want.head() < threshold) continue;
            subset.add(want);
            end = Math.max(end, subset.endAtLeast());
        }
        return end;
    }
}
