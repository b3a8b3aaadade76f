package dawnkettle.floor;

import java.util.Locale;

/** Days of a few batches with few or many hands, solved exactly: no bound may lie above the best there is. */
final class SmallDays {
    private static final int[] TIGHT = {100, 150, 250, 400};
    private static final Budget BUDGET = new Budget(2_000, 1, 60_000);

    int print(int days) {
        var solver = new ExactSolver(5, 2);
        int proved = 0;
        int reached = 0;
        int above = 0;
        for (int number = 0; number < days; number++) {
            Progress.at("small day " + number);
            FloorDay day = WorkshopDay.of(3 + number % 6, 2 + number % 5, TIGHT[number % TIGHT.length], number);
            Run run = RunEngine.run(day, BUDGET);
            ExactSolver.Found best = solver.cold(day, day.horizon());
            if (!best.proved()) continue;
            proved++;
            Score least = best.run().orElseThrow().score();
            if (least.weightedLateness() == run.score().weightedLateness()
                    && least.finish() >= run.score().finish()
                    && least.spoiltMinutes() == run.score().spoiltMinutes()) reached++;
            // A bound on lateness or finish holds for every run, also for one in which less is spoilt.
            boolean tooHigh = run.bound().weightedLateness() > least.weightedLateness()
                    || Bounds.of(day).finish() > least.finish()
                    || (least.weightedLateness() == 0
                            && least.spoiltMinutes() == 0
                            && Bounds.ofRunsInTime(new Floor(day)).finish() > least.finish());
            if (tooHigh) above++;
        }
        Progress.done();
        System.out.printf(
                Locale.ROOT,
                "Small days: %d drawn, %d solved exactly; bounds above the best: %d; engine at the best: %d%n",
                days,
                proved,
                above,
                reached);
        return above;
    }
}
