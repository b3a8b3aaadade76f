package dawnkettle.floor;

import java.util.SplittableRandom;

/** Puts pieces into an order where they do least harm, laying what comes before them once only. */
final class Insertion {
    /** Up to so many positions every one is tried, beyond it a sample. */
    private static final int ALL_POSITIONS = 100;

    private static final int SAMPLED_POSITIONS = 32;

    private final Sequence sequence;
    private final Pieces pieces;
    private final Lineage lineage;
    private final Allowance allowance;
    private final SplittableRandom random;
    private final int[] positionOf;

    /** The score of the last order made. */
    long grave;

    long mild;

    /** @param floor the floor of the pieces */
    Insertion(Floor floor, Pieces pieces, Allowance allowance, SplittableRandom random) {
        sequence = new Sequence(floor, pieces);
        this.pieces = pieces;
        lineage = floor.lineage;
        this.allowance = allowance;
        this.random = random;
        positionOf = new int[lineage.size()];
    }

    /** Measures an order as it stands. */
    void measure(int[] order) {
        sequence.setLimit(Long.MAX_VALUE, Long.MAX_VALUE);
        sequence.clear();
        sequence.lay(order, order.length);
        grave = sequence.grave;
        mild = sequence.mild;
    }

    /**
     * The order with the pieces, which stay together, at the best position after their parents, at most so far from
     * where they stood; null where the allowance ended.
     */
    int[] putBack(int[] order, int[] block, int around, int reach) {
        for (int at = 0; at < order.length; at++) positionOf[order[at]] = at;
        int from = 0;
        int to = order.length;
        for (int ancestor : lineage.ancestors(block[0]))
            if (isIn(order, ancestor)) from = Math.max(from, positionOf[ancestor] + 1);
        for (int child : lineage.descendants(block[block.length - 1]))
            if (isIn(order, child)) to = Math.min(to, positionOf[child]);
        from = Math.max(from, Math.min(to, around - reach));
        to = Math.min(to, Math.max(from, around + reach));
        int best = bestPosition(order, block, from, to);
        return best < 0 ? null : with(order, block, best);
    }

    private boolean isIn(int[] order, int piece) {
        int at = positionOf[piece];
        return at < order.length && order[at] == piece;
    }

    private int bestPosition(int[] order, int[] block, int from, int to) {
        grave = Long.MAX_VALUE;
        mild = Long.MAX_VALUE;
        sequence.setLimit(grave, mild);
        int step = positions(order, block, from, to) < ALL_POSITIONS ? 1 : (to - from) / SAMPLED_POSITIONS;
        int first = from + random.nextInt(step);
        sequence.restart(order, first);
        int best = from;
        int[] trial = new int[order.length + block.length];
        for (int at = first; at <= to; at += step) {
            if (step == 1 && at > from && at < to && isSkipped(order, block, at)) continue;
            if (!sequence.lay(order, at)) break;
            if (!allowance.spend()) return -1;
            int pushes = sequence.pushes();
            fill(trial, order, block, at);
            if (sequence.lay(trial, trial.length) && isBetter()) {
                best = at;
                grave = sequence.grave;
                mild = sequence.mild;
            }
            sequence.backTo(at, pushes, order);
            sequence.setLimit(grave, mild);
        }
        return best;
    }

    /** Few jobs in many pieces have no more positions for a whole job than there are jobs. */
    private int positions(int[] order, int[] block, int from, int to) {
        if (!pieces.areManyOfFewJobs()) return to - from;
        int tried = 0;
        for (int at = from; at < to; at++) if (!isSkipped(order, block, at)) tried++;
        return tried;
    }

    /** A whole job is tried before the first piece of another only: elsewhere it does much the same. */
    private boolean isSkipped(int[] order, int[] block, int at) {
        return block.length > 1 && pieces.goesOn(order[at]);
    }

    private boolean isBetter() {
        return sequence.grave < grave || (sequence.grave == grave && sequence.mild < mild);
    }

    private static int[] with(int[] order, int[] block, int at) {
        int[] whole = new int[order.length + block.length];
        fill(whole, order, block, at);
        return whole;
    }

    private static void fill(int[] whole, int[] order, int[] block, int at) {
        System.arraycopy(order, 0, whole, 0, at);
        System.arraycopy(block, 0, whole, at, block.length);
        System.arraycopy(order, at, whole, at + block.length, order.length - at);
    }
}
