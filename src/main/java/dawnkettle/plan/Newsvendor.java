package dawnkettle.plan;

import java.util.List;

/**
 * How much to have ready of what can't be had later: the amount at which one more costs as much as it brings. What is left
 * over is not all worth the same: a part keeps until somebody surely wants it (a later delivery within its days), the rest
 * is lost for what it still brings.
 *
 * @param shortage what one too few costs: its price less its making
 * @param left what one too many costs: its making less what it still brings
 * @param kept what one too many costs where it is wanted later: hardly more than its place in the cold room
 * @param later how many are surely wanted later
 */
record Newsvendor(long shortage, long left, long kept, long later) {
    Newsvendor {
        if (shortage < 0 || kept < 0 || left < kept)
            throw new IllegalArgumentException("one too many costs " + left + " or, kept, " + kept + "; one too few "
                    + shortage + "; none is below zero, and what keeps costs no more than what does not");
    }

    /** All that is left over is lost. */
    static Newsvendor ofOneDay(long shortage, long left) {
        return new Newsvendor(shortage, left, left, 0);
    }

    /** What having {@code amount} ready costs where {@code wanted} is asked for. */
    long cost(long amount, long wanted) {
        if (wanted >= amount) return (wanted - amount) * shortage;
        long over = amount - wanted;
        long keeps = Math.min(over, later);
        return keeps * kept + (over - keeps) * left;
    }

    /**
     * The least amount with the least cost over all that was ever wanted, each case counting once; 0 without any. The
     * costs are convex in the amount and bend only at {@code wanted} and {@code wanted + later}, so that one more is
     * added as long as it saves.
     */
    long best(List<Integer> wanted) {
        if (wanted.isEmpty()) return 0;
        long most = wanted.stream().mapToLong(Integer::longValue).max().orElseThrow();
        long low = 0;
        long high = most;
        while (low < high) {
            long middle = (low + high) / 2;
            if (change(middle, wanted) < 0) low = middle + 1;
            else high = middle;
        }
        return low;
    }

    /** What one more than {@code amount} adds to the cost. */
    private long change(long amount, List<Integer> wanted) {
        long sum = 0;
        for (int one : wanted) sum += cost(amount + 1, one) - cost(amount, one);
        return sum;
    }

    /**
     * The amount for a demand that falls evenly about {@code mean} (normal), all left-over lost: mean + z spread, with z
     * the standard normal quantile of shortage / (shortage + left).
     */
    static double ofNormal(double mean, double spread, double shortage, double left) {
        return mean + spread * z(shortage / (shortage + left));
    }

    /** The expected cost of that amount: (shortage + left) times the density at z times the spread. */
    static double costOfNormal(double spread, double shortage, double left) {
        double z = z(shortage / (shortage + left));
        return (shortage + left) * spread * StrictMath.exp(-z * z / 2) / StrictMath.sqrt(2 * Math.PI);
    }

    /** The standard normal quantile, by halving on its distribution. */
    private static double z(double share) {
        double low = -8;
        double high = 8;
        for (int i = 0; i < 80; i++) {
            double middle = (low + high) / 2;
            if (Normal.below(middle) < share) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }
}
