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
    private static final double TEMPERATURE = 1.0;
    /** One round in so many moves single pieces, the others whole jobs; measured on drawn days, 3 did best. */
    private static final int PIECE_ROUND = 3;

    private final Pieces pieces;
    private final Lineage lineage;
    private final Insertion insertion;
    private final SplittableRandom random;
    private int[] trial;

    Search(Floor floor, Pieces pieces, Allowance allowance, long seed) {
        this.pieces = pieces;
        lineage = floor.lineage;
        random = new SplittableRandom(seed);
        insertion = new Insertion(floor, pieces, allowance, random);
    }

    /** The best order found, no worse than the given one unless some job stands only in part. */
    int[] improve(int[] start) {
        int[] best = start.clone();
        int[] current = start.clone();
        if (start.length < 2) return best;
        insertion.measure(start);
        long bestGrave = insertion.grave;
        long bestMild = insertion.mild;
        double currentCost = Tally.cost(bestGrave, bestMild);
        while (rebuild(current)) {
            double cost = Tally.cost(insertion.grave, insertion.mild);
            if (!isAccepted(cost - currentCost)) continue;
            current = trial;
            currentCost = cost;
            if (insertion.grave > bestGrave) continue;
            if (insertion.grave == bestGrave && insertion.mild >= bestMild) continue;
            bestGrave = insertion.grave;
            bestMild = insertion.mild;
            best = current.clone();
        }
        return best;
    }

    private boolean isAccepted(double worse) {
        return worse <= 0 || random.nextDouble() < Math.exp(-worse / TEMPERATURE);
    }

    /** Takes some jobs or pieces out of a copy of the order and puts them back; false where the allowance ended first. */
    private boolean rebuild(int[] order) {
        trial = order;
        boolean single = random.nextInt(PIECE_ROUND) == 0;
        int[][] out = new int[TAKEN_OUT][];
        for (int number = 0; number < TAKEN_OUT; number++) out[number] = single ? takePiece() : takeJob();
        Arrays.sort(out, (one, other) -> Integer.compare(rank(one), rank(other)));
        for (int[] block : out) {
            if (block.length == 0) continue;
            trial = insertion.putBack(trial, block);
            if (trial == null) return false;
        }
        return true;
    }

    private int rank(int[] block) {
        return block.length == 0 ? 0 : lineage.rank(block[0]);
    }

    private int[] takePiece() {
        if (trial.length < 2) return new int[0];
        int[] block = {trial[random.nextInt(trial.length)]};
        takeOut(block);
        return block;
    }

    private int[] takeJob() {
        if (trial.length < 2) return new int[0];
        int[] block = pieces.inOrderOf(pieces.jobOf(trial[random.nextInt(trial.length)]));
        takeOut(block);
        return block;
    }

    private void takeOut(int[] block) {
        trial = Arrays.stream(trial)
                .filter(piece -> Arrays.stream(block).noneMatch(out -> out == piece))
                .toArray();
    }
}
