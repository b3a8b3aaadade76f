package dawnkettle.floor;

/** Plans the run of a day: the best of a few simple rules, then a search for as long as the budget lasts. */
public final class RunEngine {
    private final Sequence sequence;
    private int[] best = {};
    private long grave = Long.MAX_VALUE;
    private long mild = Long.MAX_VALUE;

    private RunEngine(Floor floor, Pieces pieces) {
        sequence = new Sequence(floor, pieces);
    }

    /**
     * A run that breaks no rule; jobs for which there is no room are named in it. With no decodes in the budget it is the best
     * of the rules. Two calls with the same day, decodes and seed give the same run unless the guard stopped one.
     *
     * @throws IllegalArgumentException where the day names what it lacks
     */
    public static Run run(FloorDay day, Budget budget) {
        var whole = new Floor(day);
        var orders = new Rules(whole).orders();
        var pieces = new Pieces(day);
        var floor = new Floor(pieces.asDay());
        var engine = new RunEngine(floor, pieces);
        var allowance = new Allowance(budget);
        for (int[] order : orders) engine.offer(pieces.inOrderOf(order));
        Score first = Tally.score(engine.grave, engine.mild);
        engine.offer(new Search(floor, pieces, allowance, budget.seed()).improve(engine.best));
        engine.sequence.layWhole(engine.best);
        var written = new WrittenRun(floor, pieces, engine.sequence);
        return new Run(
                written.placements(),
                written.unplaced(),
                Tally.score(engine.grave, engine.mild),
                first,
                Bounds.of(whole),
                allowance.spent(),
                allowance.stoppedEarly());
    }

    /** Keeps the order where it is better than what was offered before. */
    private void offer(int[] order) {
        sequence.layWhole(order);
        if (sequence.grave > grave || (sequence.grave == grave && sequence.mild >= mild)) return;
        grave = sequence.grave;
        mild = sequence.mild;
        best = order;
    }
}
