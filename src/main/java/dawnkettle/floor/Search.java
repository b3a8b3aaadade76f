package dawnkettle.floor;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Iterated greedy: a few jobs are taken out of the order and put back one by one where they do least harm
 * (Ruiz and Stützle 2007 for flow shops; here on an order that is laid onto a floor with waits, hands and windows).
 */
final class Search {
    /** Jobs taken out at once: the value that Ruiz and Stützle found best. */
    private static final int TAKEN_OUT = 4;
    /** How much worse an order may be, in minutes of finish, to be followed one time in e. */
    private static final double TEMPERATURE = 1.0;
    /** Up to so many jobs every position is tried, beyond it so many positions. */
    private static final int ALL_POSITIONS = 100;

    private static final int SAMPLED_POSITIONS = 32;

    private final Lineage lineage;
    private final Sequence sequence;
    private final Allowance allowance;
    private final SplittableRandom random;
    private final int[] positionOf;
    private int[] trial;
    private int length;
    private long grave;
    private long mild;

    Search(Floor floor, Allowance allowance, long seed) {
        lineage = new Lineage(floor.jobs);
        sequence = new Sequence(floor);
        this.allowance = allowance;
        random = new SplittableRandom(seed);
        positionOf = new int[floor.jobs.size()];
    }

    /** The best order found, no worse than the given one. */
    int[] improve(int[] start) {
        int[] best = start.clone();
        int[] current = start.clone();
        if (start.length < 2) return best;
        measure(start);
        long bestGrave = grave;
        long bestMild = mild;
        double currentCost = Tally.cost(grave, mild);
        while (rebuild(current)) {
            double cost = Tally.cost(grave, mild);
            if (!isAccepted(cost - currentCost)) continue;
            System.arraycopy(trial, 0, current, 0, current.length);
            currentCost = cost;
            if (grave > bestGrave || (grave == bestGrave && mild >= bestMild)) continue;
            bestGrave = grave;
            bestMild = mild;
            System.arraycopy(trial, 0, best, 0, best.length);
        }
        return best;
    }

    private void measure(int[] order) {
        sequence.setLimit(Long.MAX_VALUE, Long.MAX_VALUE);
        sequence.clear();
        sequence.lay(order, order.length);
        grave = sequence.grave;
        mild = sequence.mild;
    }

    private boolean isAccepted(double worse) {
        return worse <= 0 || random.nextDouble() < Math.exp(-worse / TEMPERATURE);
    }

    /** Takes some jobs out of a copy of the order and puts them back; false where the allowance ended first. */
    private boolean rebuild(int[] order) {
        trial = order.clone();
        length = order.length;
        int[] out = takeOut(Math.min(TAKEN_OUT, order.length - 1));
        for (int job : out) if (!putBack(job)) return false;
        return true;
    }

    private int[] takeOut(int count) {
        var out = new Integer[count];
        for (int number = 0; number < count; number++) {
            int at = random.nextInt(length);
            out[number] = trial[at];
            System.arraycopy(trial, at + 1, trial, at, --length - at);
        }
        Arrays.sort(out, (one, other) -> Integer.compare(lineage.rank(one), lineage.rank(other)));
        return Arrays.stream(out).mapToInt(Integer::intValue).toArray();
    }

    private boolean putBack(int job) {
        int from = 0;
        int to = length;
        for (int at = 0; at < length; at++) positionOf[trial[at]] = at;
        for (int ancestor : lineage.ancestors(job))
            if (isInTrial(ancestor)) from = Math.max(from, positionOf[ancestor] + 1);
        for (int child : lineage.descendants(job)) if (isInTrial(child)) to = Math.min(to, positionOf[child]);
        int at = bestPosition(job, from, to);
        if (at < 0) return false;
        insert(trial, job, at);
        length++;
        return true;
    }

    private boolean isInTrial(int job) {
        int at = positionOf[job];
        return at < length && trial[at] == job;
    }

    private void insert(int[] order, int job, int at) {
        System.arraycopy(order, at, order, at + 1, length - at);
        order[at] = job;
    }

    /** The position at which the job does least harm, the order before it being laid once only; -1 where the allowance ended. */
    private int bestPosition(int job, int from, int to) {
        int[] base = Arrays.copyOf(trial, length);
        int[] with = Arrays.copyOf(trial, length + 1);
        int best = from;
        grave = Long.MAX_VALUE;
        mild = Long.MAX_VALUE;
        sequence.setLimit(grave, mild);
        sequence.clear();
        int step = 1;
        int at = from;
        if (to - from >= ALL_POSITIONS) {
            step = (to - from) / SAMPLED_POSITIONS;
            at += random.nextInt(step);
        }
        for (; at <= to; at += step) {
            if (!sequence.lay(base, at)) break;
            if (!allowance.spend()) return -1;
            System.arraycopy(base, 0, with, 0, at);
            with[at] = job;
            System.arraycopy(base, at, with, at + 1, length - at);
            int pushes = sequence.pushes();
            if (sequence.lay(with, length + 1) && isBetter()) {
                best = at;
                grave = sequence.grave;
                mild = sequence.mild;
            }
            sequence.backTo(at, pushes, base);
            sequence.setLimit(grave, mild);
        }
        return best;
    }

    private boolean isBetter() {
        return sequence.grave < grave || (sequence.grave == grave && sequence.mild < mild);
    }
}
