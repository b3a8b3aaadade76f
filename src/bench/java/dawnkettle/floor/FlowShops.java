package dawnkettle.floor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Published flow shops (Taillard 1993) with the same engine. The best known finishes are those of one order of jobs on all
 * machines; the engine may let a job pass another between machines, so that it can end before them.
 */
final class FlowShops {
    private final Budget budget;

    FlowShops(Budget budget) {
        this.budget = budget;
    }

    /** Seeds from a public C generator of the set, best known finishes agreeing in several public lists. */
    enum Set {
        S20X5(
                20,
                5,
                new long[] {
                    873654221,
                    379008056,
                    1866992158,
                    216771124,
                    495070989,
                    402959317,
                    1369363414,
                    2021925980,
                    573109518,
                    88325120
                },
                new int[] {1278, 1359, 1081, 1293, 1235, 1195, 1234, 1206, 1230, 1108}),
        S20X10(
                20,
                10,
                new long[] {
                    587595453,
                    1401007982,
                    873136276,
                    268827376,
                    1634173168,
                    691823909,
                    73807235,
                    1273398721,
                    2065119309,
                    1672900551
                },
                new int[] {1582, 1659, 1496, 1377, 1419, 1397, 1484, 1538, 1593, 1591}),
        S20X20(
                20,
                20,
                new long[] {
                    479340445,
                    268827376,
                    1958948863,
                    918272953,
                    555010963,
                    2010851491,
                    1519833303,
                    1748670931,
                    1923497586,
                    1829909967
                },
                new int[] {2297, 2099, 2326, 2223, 2291, 2226, 2273, 2200, 2237, 2178}),
        S50X5(
                50,
                5,
                new long[] {
                    1328042058,
                    200382020,
                    496319842,
                    1203030903,
                    1730708564,
                    450926852,
                    1303135678,
                    1273398721,
                    587288402,
                    248421594
                },
                new int[] {2724, 2834, 2621, 2751, 2863, 2829, 2725, 2683, 2552, 2782});

        final int jobs;
        final int machines;
        final long[] seeds;
        final int[] best;

        Set(int jobs, int machines, long[] seeds, int[] best) {
            this.jobs = jobs;
            this.machines = machines;
            this.seeds = seeds;
            this.best = best;
        }
    }

    void print() {
        System.out.printf(Locale.ROOT, "Published flow shops: %d decodes each%n", budget.decodes());
        System.out.println(
                "set       above best known (mean, most)   earlier as 0 (mean)   reached   processor s each");
        for (Set set : Set.values()) print(set);
    }

    private void print(Set set) {
        var above = new ArrayList<Double>();
        int reached = 0;
        long began = Growth.processorNanos();
        for (int number = 0; number < set.seeds.length; number++) {
            Progress.at(set + " " + (number + 1));
            Run run = RunEngine.run(Taillard.shop(set.seeds[number], set.jobs, set.machines), budget);
            above.add(100.0 * run.score().finish() / set.best[number] - 100);
            if (run.score().finish() <= set.best[number]) reached++;
        }
        Progress.done();
        System.out.printf(
                Locale.ROOT,
                "%-8s %14.3f%% %9.3f%% %18.3f%% %10d/10 %10.1f%n",
                set.jobs + "x" + set.machines,
                mean(above),
                DaySuite.most(above),
                mean(above.stream().map(one -> Math.max(0, one)).toList()),
                reached,
                (Growth.processorNanos() - began) / 1e10);
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(value -> value).average().orElse(0);
    }
}
