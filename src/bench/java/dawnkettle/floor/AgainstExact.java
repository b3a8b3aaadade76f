package dawnkettle.floor;

import java.util.Locale;

/** The engine's runs beside those of a general constraint solver, which starts from nothing or from ours. */
final class AgainstExact {
    private static final int WORKERS = 2;

    private final Budget budget;
    private final double seconds;

    AgainstExact(Budget budget, double seconds) {
        this.budget = budget;
        this.seconds = seconds;
    }

    int print(int seeds, int... sizes) {
        System.out.printf(
                Locale.ROOT,
                "Against a constraint solver (2 workers): seeds 1 to %d, %d decodes; equal time, and %.0f s%n",
                seeds,
                budget.decodes(),
                seconds);
        System.out.println(
                "batches kind  seed   ours (late, finish)   s    cold equal    warm equal     cold long     warm long");
        int broken = 0;
        for (int tight : new int[] {DaySuite.EASY, DaySuite.TIGHT})
            for (int batches : sizes) for (int seed = 1; seed <= seeds; seed++) broken += line(batches, tight, seed);
        return broken;
    }

    private int line(int batches, int tight, int seed) {
        Progress.at(batches + " batches, seed " + seed);
        FloorDay day = WorkshopDay.of(batches, DaySuite.WORKERS, tight, seed);
        long began = System.nanoTime();
        Run ours = RunEngine.run(day, budget);
        double took = (System.nanoTime() - began) / 1e9;
        var equal = new ExactSolver(Math.max(0.1, took), WORKERS);
        var patient = new ExactSolver(seconds, WORKERS);
        int most = ours.first().finish() + 200;
        String cold = said(equal.cold(day, most));
        String warm = said(equal.from(day, ours));
        String coldLong = said(patient.cold(day, most));
        ExactSolver.Found best = patient.from(day, ours);
        Progress.done();
        System.out.printf(
                Locale.ROOT,
                "%7d %-5s %4d   %8d %8d %8.1f  %12s  %12s  %12s  %12s%n",
                batches,
                tight == DaySuite.EASY ? "easy" : "tight",
                seed,
                ours.score().weightedLateness(),
                ours.score().finish(),
                took,
                cold,
                warm,
                coldLong,
                said(best));
        return best.run()
                .map(run -> RunCheck.broken(day, run).size()
                        + PlainCheck.broken(day, run).size())
                .orElse(0);
    }

    private static String said(ExactSolver.Found found) {
        return found.run()
                .map(run -> run.score().weightedLateness() + "/" + run.score().finish() + (found.proved() ? "*" : ""))
                .orElse("none");
    }
}
