package dawnkettle.floor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Drawn days: rules broken, lateness, finish and what is proved, at the default budget. */
final class DaySuite {
    static final int WORKERS = 6;
    static final int EASY = 100;
    static final int TIGHT = 130;
    private static final int[] BATCHES = {10, 25, 40, 60, 100, 200, 400};

    private final Budget budget;
    private final int seeds;
    private final int seedsOfLarge;

    /** @param seedsOfLarge seeds of days of more than 60 batches */
    DaySuite(Budget budget, int seeds, int seedsOfLarge) {
        this.budget = budget;
        this.seeds = seeds;
        this.seedsOfLarge = seedsOfLarge;
    }

    /** One line a size and kind of day; answers how many rules were broken. */
    int print() {
        System.out.printf(
                Locale.ROOT,
                "Day suite: seeds 1 to %d (above 60 batches 1 to %d), %d decodes%n",
                seeds,
                seedsOfLarge,
                budget.decodes());
        System.out.println(
                "batches kind   broken  late (median, most)  finish  first  bound  gap median  gap most  processor ms");
        int broken = 0;
        for (int tight : new int[] {EASY, TIGHT}) for (int batches : BATCHES) broken += print(batches, tight);
        return broken;
    }

    private int print(int batches, int tight) {
        var late = new ArrayList<Double>();
        var finish = new ArrayList<Double>();
        var first = new ArrayList<Double>();
        var bound = new ArrayList<Double>();
        var gap = new ArrayList<Double>();
        var millis = new ArrayList<Double>();
        int broken = 0;
        if (batches > 60 && seedsOfLarge == 0) return 0;
        for (int seed = 1; seed <= (batches > 60 ? seedsOfLarge : seeds); seed++) {
            Progress.at(batches + " batches, seed " + seed);
            FloorDay day = WorkshopDay.of(batches, WORKERS, tight, seed);
            long began = Growth.processorNanos();
            Run run = RunEngine.run(day, budget);
            millis.add((Growth.processorNanos() - began) / 1e6);
            broken += RunCheck.broken(day, run).size()
                    + PlainCheck.broken(day, run).size()
                    + run.unplaced().size();
            late.add((double) run.score().weightedLateness());
            finish.add((double) run.score().finish());
            first.add((double) run.first().finish());
            bound.add((double) run.bound().finish());
            gap.add(100.0 * run.score().finish() / run.bound().finish() - 100);
        }
        Progress.done();
        System.out.printf(
                Locale.ROOT,
                "%7d %-6s %6d  %12.0f %6.0f  %6.0f %6.0f %6.0f  %9.1f%% %8.1f%% %10.0f%n",
                batches,
                tight == EASY ? "easy" : "tight",
                broken,
                median(late),
                most(late),
                median(finish),
                median(first),
                median(bound),
                median(gap),
                most(gap),
                median(millis));
        return broken;
    }

    static double median(List<Double> values) {
        var sorted = values.stream().sorted().toList();
        int middle = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(middle) : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
    }

    static double most(List<Double> values) {
        return values.stream().mapToDouble(value -> value).max().orElse(0);
    }
}
