package dawnkettle.label;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

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
