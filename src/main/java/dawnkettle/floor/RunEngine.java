package dawnkettle.floor;

import java.util.List;
import java.util.stream.IntStream;

/** Plans the run of a day: the best of a few simple rules, then searches side by side for as long as the budget lasts. */
public final class RunEngine {
    /** Searches side by side, each with a seed and a share of the budget of its own, as many on any machine. */
    private static final int SEARCHES = 2;

    private RunEngine() {}

    /**
     * A run that breaks no rule; jobs for which there is no room are named in it. With no decodes in the budget it is the best
     * of the rules. Two calls with the same day, decodes and seed give the same run unless the guard stopped one.
     *
     * @throws IllegalArgumentException where the day names what it lacks
     */
    public static Run run(FloorDay day, Budget budget) {
        budget.moving().run();
        var whole = new Floor(day);
        var laid = new Laid(day);
        List<Allowance> shares = Allowance.shares(budget, SEARCHES);
        Draft first = new Rules(whole)
                .orders().stream()
                        .map(order -> laid.lay(laid.pieces.inOrderOf(order)))
                        .reduce(Draft.NONE, Draft::orBetter);
        Draft best = improved(day, first, shares, budget.seed());
        laid.lay(best.order());
        WrittenRun written = laid.written();
        return new Run(
                written.placements(),
                written.unplaced(),
                best.score(),
                first.score(),
                budget.decodes() > 0 && best.isInTime() ? Bounds.ofRunsInTime(whole) : Bounds.of(whole),
                shares.stream().mapToLong(Allowance::spent).sum(),
                shares.stream().anyMatch(Allowance::stoppedEarly));
    }

    /** The best that the searches find; of two alike the first search's. */
    private static Draft improved(FloorDay day, Draft first, List<Allowance> shares, long seed) {
        if (first.order().length == 0) return first;
        return IntStream.range(0, shares.size())
                .parallel()
                .mapToObj(number -> new BothWays(day, shares.get(number), seed * SEARCHES + number).improve(first))
                .toList()
                .stream()
                .reduce(first, Draft::orBetter);
    }
}
