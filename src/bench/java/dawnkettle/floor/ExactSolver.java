package dawnkettle.floor;

import com.google.ortools.Loader;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** A general constraint solver (CP-SAT) set onto a day, to see how good the engine's runs are. */
final class ExactSolver {
    private final double seconds;
    private final int workers;

    ExactSolver(double seconds, int workers) {
        this.seconds = seconds;
        this.workers = workers;
        Loader.loadNativeLibraries();
    }

    /**
     * What it found: nothing where time ran out before the first run.
     *
     * @param least no run is better than this by spoilt minutes, lateness and finish in one number
     */
    record Found(Optional<Run> run, long objective, long least, boolean proved, boolean impossible) {}

    Found cold(FloorDay day, int latestFinish) {
        return solve(day, new ExactModel(day, latestFinish));
    }

    Found from(FloorDay day, Run run) {
        var exact = new ExactModel(day, run.score().finish());
        exact.hint(run.placements());
        return solve(day, exact);
    }

    private Found solve(FloorDay day, ExactModel exact) {
        var solver = new CpSolver();
        solver.getParameters()
                .setMaxTimeInSeconds(seconds)
                .setNumWorkers(workers)
                .setRandomSeed(1);
        CpSolverStatus status = solver.solve(exact.model);
        boolean any = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        long least = Math.round(Math.ceil(solver.bestObjectiveBound() - 1e-6));
        return new Found(
                any ? Optional.of(written(day, exact, solver)) : Optional.empty(),
                any ? Math.round(solver.objectiveValue()) : -1,
                least,
                status == CpSolverStatus.OPTIMAL,
                status == CpSolverStatus.INFEASIBLE);
    }

    private static Run written(FloorDay day, ExactModel exact, CpSolver solver) {
        var placements = new ArrayList<Placement>();
        for (Job job : day.jobs())
            for (int step = 0; step < job.operations().size(); step++) {
                IntVar start = exact.starts.get(job.id()).get(step);
                var option = exact.options.get(job.id()).get(step).stream()
                        .filter(one -> solver.booleanValue(one.chosen()))
                        .findFirst()
                        .orElseThrow();
                int from = Math.toIntExact(solver.value(start));
                int until = from + job.operations().get(step).minutes();
                placements.add(new Placement(job.id(), step, option.station().code(), option.place(), from, until));
            }
        placements.sort(Comparator.comparingInt(Placement::start)
                .thenComparing(Placement::job)
                .thenComparingInt(Placement::operation));
        return scored(day, deal(day, placements));
    }

    /** Places of stations on which only their number counts, given out in order of start. */
    private static List<Placement> deal(FloorDay day, List<Placement> placements) {
        var dealt = new ArrayList<>(placements);
        for (Station station : day.stations()) {
            boolean placed = day.changeovers().stream()
                    .anyMatch(changeover -> changeover.station().equals(station.code()) && changeover.minutes() > 0);
            if (station.places() <= 1 || placed) continue;
            int[] free = new int[station.places()];
            for (int at = 0; at < dealt.size(); at++) {
                Placement one = dealt.get(at);
                if (!one.station().equals(station.code()) || one.start() == one.end()) continue;
                int place = 0;
                while (free[place] > one.start()) place++;
                free[place] = one.end();
                dealt.set(at, new Placement(one.job(), one.operation(), one.station(), place, one.start(), one.end()));
            }
        }
        return dealt;
    }

    private static Run scored(FloorDay day, List<Placement> placements) {
        var zero = new Score(0, 0, 0, 0, 0);
        var run = new Run(placements, List.of(), zero, zero, new Bound(0, 0, ""), 0, false);
        Score score = new ScoreCount(day, run).score();
        return new Run(placements, List.of(), score, score, run.bound(), 0, false);
    }
}
