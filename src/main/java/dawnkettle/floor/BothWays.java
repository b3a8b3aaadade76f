package dawnkettle.floor;

import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * A search that goes through the day from the front and from the end by turns. From the front every job stands as early as it
 * can, from the end as late as it can; each way finds runs that the other can't (as forward-backward justification does for
 * projects, Li and Willis 1992, but here with a whole search each way).
 */
final class BothWays {
    /** Of a hundred decodes so many go into the first search from the front; measured, the sooner it turns the better. */
    private static final int FIRST_PERCENT = 30;
    /** One later turn takes so many decodes, or less where the allowance is small. */
    private static final int TURN = 10_000;

    private static final int LEAST_TURNS = 10;
    /** As often as the end brings nothing the next turn from the front is twice as long, up to so many times. */
    private static final int MOST_DOUBLED = 3;

    /** From the end a run is looked for that ends, or leaves a van waiting, so many minutes less. */
    private static final int GAIN = 2;

    private final FloorDay day;
    private final Laid front;
    private final Allowance allowance;
    private final SplittableRandom random;
    private Draft best;

    BothWays(FloorDay day, Allowance allowance, long seed) {
        this.day = day;
        front = new Laid(day);
        this.allowance = allowance;
        random = new SplittableRandom(seed);
    }

    /** The best found, no worse than the first. */
    Draft improve(Draft first) {
        best = front.lay(first.order());
        long turn = Math.min(TURN, allowance.left() / LEAST_TURNS + 1);
        boolean canTurn = canTurn();
        allowance.open(canTurn ? allowance.left() * FIRST_PERCENT / 100 + 1 : allowance.left());
        fromFront();
        long before = -1;
        int failed = 0;
        while (canTurn && allowance.left() > 0 && allowance.spent() > before) {
            before = allowance.spent();
            allowance.open(turn);
            failed = best.score().unplaced() == 0 && fromEnd() ? 0 : failed + 1;
            allowance.open(turn << Math.min(failed, MOST_DOUBLED));
            fromFront();
        }
        return best;
    }

    /** What has happened can't be read from the end, for it stands where it stands. */
    private boolean canTurn() {
        return best.order().length > 1
                && day.jobs().stream().allMatch(job -> job.fixed().isEmpty());
    }

    private void fromFront() {
        offer(new Search(front.floor, front.pieces, allowance, random.split()).improve(best.order()));
    }

    private boolean offer(Draft draft) {
        Draft whole = front.lay(draft.order());
        boolean better = whole.isBetterThan(best);
        if (better) best = whole;
        return better;
    }

    /** Looks from the end for a run that is a little better than the best; true where laid from the front it is. */
    private boolean fromEnd() {
        front.lay(best.order());
        Score score = best.score();
        int[] dueEnds = dueEnds();
        if (score.weightedLateness() > 0) hurry(dueEnds);
        int end = score.weightedLateness() > 0 ? score.finish() : score.finish() - GAIN;
        var back = new Laid(new MirrorDay(day, end, dueEnds).mirrored());
        int[] order = back.orderBy(piece -> -front.end(back.pieces.jobOf(piece), lastStep(back, piece)));
        var search = new Search(back.floor, back.pieces, allowance, random.split());
        Draft late = back.lay(search.untilInTime(order).order());
        if (late.score().unplaced() > 0) return false;
        return offer(new Draft(
                front.orderBy(piece -> end - back.end(front.pieces.jobOf(piece), lastStep(front, piece))), 0, 0));
    }

    /** The step with which a piece begins, counted from the other end of its job. */
    private static int lastStep(Laid laid, int piece) {
        return laid.pieces.whole(laid.pieces.jobOf(piece)).operations().size() - 1 - laid.pieces.offset(piece);
    }

    private int[] dueEnds() {
        return IntStream.range(0, day.dues().size()).map(this::dueEnd).toArray();
    }

    private int dueEnd(int due) {
        int end = day.dues().get(due).minute();
        for (int job = 0; job < day.jobs().size(); job++)
            if (front.floor.jobs.isAwaitedBy(front.pieces.last(job), due))
                end = Math.max(
                        end, front.end(job, day.jobs().get(job).operations().size() - 1));
        return end;
    }

    private void hurry(int[] dueEnds) {
        int[] late = IntStream.range(0, dueEnds.length)
                .filter(due -> dueEnds[due] > day.dues().get(due).minute())
                .toArray();
        if (late.length == 0) return;
        int due = late[random.nextInt(late.length)];
        dueEnds[due] = Math.max(day.dues().get(due).minute(), dueEnds[due] - GAIN);
    }
}
