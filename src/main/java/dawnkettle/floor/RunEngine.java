package dawnkettle.floor;

import java.util.List;
import java.util.stream.IntStream;

/** Plans the run of a day: the best of a few simple rules, then searches side by side for as long as the budget lasts. */
public final class RunEngine {
    /** Searches side by side, each with a seed and a share of the budget of its own, as many on any machine. */
    private static final int SEARCHES = 2;
    /** From so many decodes on one of them starts from the order that a place with changeovers asks for. */
    private static final long WORTH_A_SECOND_START = 5_000;

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
        Draft second = isWorthASecondStart(day, budget) ? byPlace(whole, laid, first) : first;
        Draft best = improved(day, List.of(first, second), shares, budget.seed());
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

    /** What is under way goes first in any order. */
    private static boolean isWorthASecondStart(FloorDay day, Budget budget) {
        return budget.decodes() >= WORTH_A_SECOND_START
                && day.jobs().stream().allMatch(job -> job.fixed().isEmpty());
    }

    /** The better of the orders that waste least of the place with changeovers; the given one where there is no such place. */
    private static Draft byPlace(Floor whole, Laid laid, Draft first) {
        var rules = new Rules(whole);
        int[] early = rules.orders().get(0);
        return new Endings(whole)
                .ordersByPlace().stream()
                        .map(order -> laid.lay(laid.pieces.inOrderOf(rules.with(early, order))))
                        .reduce(Draft::orBetter)
                        .orElse(first);
    }

    /** The best that the searches find, each from its own start; of two alike the first search's. */
    private static Draft improved(FloorDay day, List<Draft> starts, List<Allowance> shares, long seed) {
        if (starts.get(0).order().length == 0) return starts.get(0);
        return IntStream.range(0, shares.size())
                .parallel()
                .mapToObj(number ->
                        new BothWays(day, shares.get(number), seed * SEARCHES + number).improve(starts.get(number)))
                .toList()
                .stream()
                .reduce(starts.get(0), Draft::orBetter);
    }
}
