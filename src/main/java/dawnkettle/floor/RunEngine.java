package dawnkettle.floor;

import java.util.List;

/** Plans the run of a day: the best of a few simple rules, then a search for as long as the budget lasts. */
public final class RunEngine {
    private final Floor floor;
    private final Sequence sequence;
    private long grave = Long.MAX_VALUE;
    private long mild = Long.MAX_VALUE;

    private RunEngine(Floor floor) {
        this.floor = floor;
        sequence = new Sequence(floor);
    }

    /**
     * A run that breaks no rule; jobs for which there is no room are named in it. With no decodes in the budget it is the best
     * of the rules. Two calls with the same day, decodes and seed give the same run unless the guard stopped one.
     *
     * @throws IllegalArgumentException where the day names what it lacks
     */
    public static Run run(FloorDay day, Budget budget) {
        var floor = new Floor(day);
        var engine = new RunEngine(floor);
        var allowance = new Allowance(budget);
        int[] start = engine.bestOf(new Rules(floor).orders());
        Score first = Tally.score(engine.grave, engine.mild);
        int[] best = new Search(floor, allowance, budget.seed()).improve(start);
        engine.lay(best);
        var written = new WrittenRun(floor, engine.sequence);
        return new Run(
                written.placements(),
                written.unplaced(),
                Tally.score(engine.sequence.grave, engine.sequence.mild),
                first,
                Bounds.of(floor),
                allowance.spent(),
                allowance.stoppedEarly());
    }

    private int[] bestOf(List<int[]> orders) {
        int[] best = orders.get(0);
        for (int[] order : orders) {
            lay(order);
            if (sequence.grave > grave || (sequence.grave == grave && sequence.mild >= mild)) continue;
            grave = sequence.grave;
            mild = sequence.mild;
            best = order;
        }
        return best;
    }

    private void lay(int[] order) {
        sequence.clear();
        sequence.lay(order, order.length);
    }
}
