package dawnkettle.book;

import java.util.Collection;
import java.util.Optional;

/**
 * The word that a misspelt one stands for, where that is certain.
 *
 * <p>Two neighbouring letters that changed places cost 2; a letter left out, put in or changed costs 3. A word of four to
 * six letters may cost 3, a longer one 6, and the first letter must agree. The nearest word counts only where any
 * word of another meaning costs at least {@value #MARGIN} more: a near tie is asked.
 */
final class Slip {
    static final int MARGIN = 1;
    private static final int SWAP = 2;
    private static final int CHANGE = 3;
    private static final int SHORTEST = 4;
    private static final int LONG = 7;

    private Slip() {}

    /** A known word and what it means. */
    record Known(String word, String meaning) {}

    /** The known word that was meant. */
    static Optional<String> meant(String written, Collection<Known> known) {
        int most = most(written);
        if (most == 0) return Optional.empty();
        int best = Integer.MAX_VALUE;
        int other = Integer.MAX_VALUE;
        String meaning = "";
        String word = "";
        for (Known one : known) {
            if (Math.abs(one.word().length() - written.length()) > 2) continue;
            int cost = cost(written, one.word());
            if (!one.meaning().equals(meaning)) other = Math.min(other, Math.max(best, cost));
            if (cost >= best) continue;
            best = cost;
            meaning = one.meaning();
            word = one.word();
        }
        boolean certain = best <= most && other - best >= MARGIN;
        return certain ? Optional.of(word) : Optional.empty();
    }

    private static int most(String written) {
        if (written.length() < SHORTEST) return 0;
        return written.length() < LONG ? CHANGE : 2 * CHANGE;
    }

    /** What it costs to make one word of the other; without limit where the first letters differ. */
    static int cost(String from, String to) {
        if (from.charAt(0) != to.charAt(0) || to.length() < SHORTEST) return Integer.MAX_VALUE / 2;
        int[][] cost = new int[from.length() + 1][to.length() + 1];
        for (int i = 0; i <= from.length(); i++) cost[i][0] = i * CHANGE;
        for (int j = 0; j <= to.length(); j++) cost[0][j] = j * CHANGE;
        for (int i = 1; i <= from.length(); i++)
            for (int j = 1; j <= to.length(); j++) cost[i][j] = cell(from, to, i, j, cost);
        return cost[from.length()][to.length()];
    }

    private static int cell(String from, String to, int i, int j, int[][] cost) {
        int same = from.charAt(i - 1) == to.charAt(j - 1) ? 0 : CHANGE;
        int least = Math.min(cost[i - 1][j - 1] + same, CHANGE + Math.min(cost[i - 1][j], cost[i][j - 1]));
        boolean swapped = i > 1
                && j > 1
                && from.charAt(i - 1) == to.charAt(j - 2)
                && from.charAt(i - 2) == to.charAt(j - 1)
                && from.charAt(i - 1) != from.charAt(i - 2);
        return swapped ? Math.min(least, cost[i - 2][j - 2] + SWAP) : least;
    }
}
