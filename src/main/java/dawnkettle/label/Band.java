package dawnkettle.label;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Rows with ink that are sent by one command, cut to the bytes that have any.
 *
 * @param top first row
 * @param until row after the last
 * @param left first byte
 * @param right byte after the last
 */
record Band(int top, int until, int left, int right) {
    int rows() {
        return until - top;
    }

    int rowBytes() {
        return right - left;
    }

    /** The bands that cost the fewest bytes, a command costing {@code overhead} of its own. */
    static List<Band> cheapest(Dots fed, int overhead, boolean cutsLeft) {
        int height = fed.height();
        int[] firsts = new int[height];
        int[] lasts = new int[height];
        for (int y = 0; y < height; y++) extent(fed.row(y), y, firsts, lasts);
        long[] cost = new long[height + 1];
        Band[] chosen = new Band[height + 1];
        for (int until = 1; until <= height; until++) {
            cost[until] = lasts[until - 1] < 0 ? cost[until - 1] : Long.MAX_VALUE;
            int left = Integer.MAX_VALUE;
            int right = 0;
            for (int top = until - 1; top >= 0 && lasts[until - 1] >= 0; top--) {
                left = cutsLeft ? Math.min(left, firsts[top]) : 0;
                right = Math.max(right, lasts[top] + 1);
                long whole = cost[top] + overhead + (long) (until - top) * (right - left);
                if (whole >= cost[until]) continue;
                cost[until] = whole;
                chosen[until] = new Band(top, until, left, right);
            }
        }
        return traced(chosen, lasts);
    }

    /** The rows from the first to the last with ink as one; empty where there is none. */
    static Optional<Band> around(Dots fed, boolean cutsSides) {
        int top = 0;
        while (top < fed.height() && fed.isBlank(top)) top++;
        if (top == fed.height()) return Optional.empty();
        int until = fed.height();
        while (fed.isBlank(until - 1)) until--;
        if (!cutsSides) return Optional.of(new Band(top, until, 0, fed.rowBytes()));
        int[] firsts = new int[fed.height()];
        int[] lasts = new int[fed.height()];
        for (int y = top; y < until; y++) extent(fed.row(y), y, firsts, lasts);
        int left = Arrays.stream(firsts, top, until).min().orElseThrow();
        int right = Arrays.stream(lasts, top, until).max().orElseThrow() + 1;
        return Optional.of(new Band(top, until, left, right));
    }

    private static void extent(byte[] row, int y, int[] firsts, int[] lasts) {
        firsts[y] = Integer.MAX_VALUE;
        lasts[y] = -1;
        for (int i = 0; i < row.length; i++) {
            if (row[i] == 0) continue;
            firsts[y] = Math.min(firsts[y], i);
            lasts[y] = i;
        }
    }

    private static List<Band> traced(Band[] chosen, int[] lasts) {
        List<Band> bands = new ArrayList<>();
        int until = lasts.length;
        while (until > 0) {
            if (lasts[until - 1] < 0) until--;
            else {
                bands.add(chosen[until]);
                until = chosen[until].top();
            }
        }
        Collections.reverse(bands);
        return bands;
    }
}
