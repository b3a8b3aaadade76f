package dawnkettle.floor;

import java.util.List;
import java.util.stream.IntStream;

/** The published generator of flow shops: E. Taillard, Benchmarks for basic scheduling problems, EJOR 64 (1993). */
final class Taillard {
    private static final int HORIZON = 6_000;

    private Taillard() {}

    /** Minutes by machine and job: a linear congruential generator, a = 16807, m = 2^31 - 1, by Schrage's split. */
    static int[][] minutes(long seed, int jobs, int machines) {
        var minutes = new int[machines][jobs];
        long drawn = seed;
        for (int[] machine : minutes)
            for (int job = 0; job < jobs; job++) {
                drawn = 16807 * (drawn % 127773) - drawn / 127773 * 2836;
                if (drawn < 0) drawn += Integer.MAX_VALUE;
                machine[job] = 1 + (int) ((double) drawn / Integer.MAX_VALUE * 99);
            }
        return minutes;
    }

    static FloorDay shop(long seed, int jobs, int machines) {
        return shop(minutes(seed, jobs, machines));
    }

    /** One place a stage, nobody needed, no wait too long. */
    static FloorDay shop(int[][] minutes) {
        var stations = IntStream.range(0, minutes.length)
                .mapToObj(stage -> new Station("m" + stage, "m" + stage, 1, 0, List.of(new Window(0, HORIZON))))
                .toList();
        var jobs = IntStream.range(0, minutes[0].length)
                .mapToObj(job -> job(job, minutes))
                .toList();
        return new FloorDay(stations, List.of(), List.of(), List.of(), jobs, HORIZON);
    }

    private static Job job(int number, int[][] minutes) {
        var steps = IntStream.range(0, minutes.length)
                .mapToObj(stage -> new Operation("m" + stage, minutes[stage][number], 0, Operation.ANY_WAIT, 0))
                .toList();
        return new Job("J" + number, "", 0, Integer.MAX_VALUE, steps, List.of(), List.of(), List.of());
    }
}
