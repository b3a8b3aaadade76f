package dawnkettle.floor;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Iterated greedy: a few jobs, or a few pieces of jobs, are taken out of the order and put back one by one where they do least
 * harm (Ruiz and Stützle 2007 for flow shops; here on an order that is laid onto a floor with waits, hands and windows).
 */
final class Search {
    /** Taken out at once: the value that Ruiz and Stützle found best. */
    private static final int TAKEN_OUT = 4;
    /** How much worse an order may be, in minutes of finish, to be followed one time in e. */
    private static final double TEMPERATURE = 2.0;
    /** The same while vans are late: a weighted minute late costs as much as five of finish. */
    private static final double LATE_TEMPERATURE = 20.0;
    /** One round in so many moves single pieces, the others whole jobs; measured on drawn days, 3 did best. */
    private static final int PIECE_ROUND = 3;

    /** From so many pieces on most rounds stay near: all positions would take too much of the allowance. */
    private static final int LONG_ORDER = 100;
    /** In a long order half of the rounds take out what stands at most so far from each other. */
    private static final int NEAR = 8;
    /** In a long order so many of a hundred pieces go back at most this far from where they stood. */
    private static final int REACH = 12;

    private static final int REACH_PERCENT = 85;

    private static final int ANYWHERE = -1;

    private final Pieces pieces;
    private final Lineage lineage;
    private final Insertion insertion;
    private final SplittableRandom random;
    private int[] trial;
    private int centre;

    Search(Floor floor, Pieces pieces, Allowance allowance, SplittableRandom random) {
        this.pieces = pieces;
        lineage = floor.lineage;
        this.random = random;
        insertion = new Insertion(floor, pieces, allowance, random);
    }

    /** The best order found, no worse than the given one unless some job stands only in part. */
    Draft improve(int[] start) {
        return improve(start, false);
    }

    /** As {@link #improve}, but done as soon as nothing is late any more. */
    Draft untilInTime(int[] start) {
        return improve(start, true);
    }

    private Draft improve(int[] start, boolean untilInTime) {
        insertion.measure(start);
        Draft current = new Draft(start.clone(), insertion.grave, insertion.mild);
        Draft best = current;
        while (start.length > 1 && !(untilInTime && best.isInTime()) && rebuild(current.order())) {
            var next = new Draft(trial, insertion.grave, insertion.mild);
            if (!isAccepted(next.cost() - current.cost(), current.isLate())) continue;
            current = next;
            best = best.orBetter(current);
        }
        return best;
    }

    private boolean isAccepted(double worse, boolean late) {
        return worse <= 0 || random.nextDouble() < StrictMath.exp(-worse / (late ? LATE_TEMPERATURE : TEMPERATURE));
    }

    /** Takes some jobs or pieces out of a copy of the order and puts them back; false where the allowance ended first. */
    private boolean rebuild(int[] order) {
        trial = order;
        boolean single = random.nextInt(PIECE_ROUND) == 0;
        centre = isLong(order) && random.nextBoolean() ? random.nextInt(order.length) : ANYWHERE;
        int[][] out = new int[Math.min(TAKEN_OUT, order.length - 1)][];
        for (int number = 0; number < out.length; number++) out[number] = take(single);
        Arrays.sort(out, (one, other) -> Integer.compare(rank(one), rank(other)));
        for (int[] block : out) {
            if (block.length == 0) continue;
            int around = indexOf(order, block[0]);
            int reach = isLong(order) && random.nextInt(100) < REACH_PERCENT ? REACH : order.length;
            trial = insertion.putBack(trial, block, around, reach);
            if (trial == null) return false;
        }
        return true;
    }

    private boolean isLong(int[] order) {
        return order.length > LONG_ORDER && !pieces.areManyOfFewJobs();
    }

    private int rank(int[] block) {
        return block.length == 0 ? 0 : lineage.rank(block[0]);
    }

    /** A piece, or all open pieces of a job; nothing where only one is left. */
    private int[] take(boolean single) {
        if (trial.length < 2) return new int[0];
        int piece = trial[pick()];
        int[] block = single ? new int[] {piece} : pieces.inOrderOf(pieces.jobOf(piece));
        takeOut(block);
        return block;
    }

    private int pick() {
        if (centre == ANYWHERE) return random.nextInt(trial.length);
        int at = centre - NEAR + random.nextInt(2 * NEAR);
        return Math.max(0, Math.min(trial.length - 1, at));
    }

    private void takeOut(int[] block) {
        trial = Arrays.stream(trial)
                .filter(piece -> Arrays.stream(block).noneMatch(out -> out == piece))
                .toArray();
    }

    private static int indexOf(int[] order, int piece) {
        int at = 0;
        while (order[at] != piece) at++;
        return at;
    }
}
