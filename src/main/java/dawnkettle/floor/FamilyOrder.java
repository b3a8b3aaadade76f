package dawnkettle.floor;

import java.util.ArrayList;
import java.util.List;

/**
 * How early the work of one place can be over, changeovers and the way behind the place counted: the best of all orders of
 * families. A family is split by its last minutes at most, and those go by rising last minute (Monma and Potts 1989 prove it
 * for due minutes and changeovers that no way round shortens; jobs of one family count as equally long on their way here).
 */
final class FamilyOrder {
    /** Beyond so many states the orders are no longer looked through. */
    private static final int MOST_STATES = 400_000;

    /**
     * A part of a family that is done in one go.
     *
     * @param tail minutes at least that each of its jobs is still on its way
     * @param lastMinute by which it must be done, counted from the first start
     */
    record Part(int minutes, int tail, int lastMinute) {}

    /** Where the work stands after some parts: the minutes it took, and how early all of them can be at their end. */
    private record Stand(int minutes, int end) {
        boolean isNoWorseThan(Stand other) {
            return minutes <= other.minutes && end <= other.end;
        }
    }

    private final int[][] changeover;
    private final List<List<Part>> families;
    private final int[] step;
    private final int states;
    private final List<List<Stand>> stands = new ArrayList<>();

    /**
     * @param changeover minutes between families, no longer than a way round
     * @param families the parts of each family by rising last minute
     */
    FamilyOrder(int[][] changeover, List<List<Part>> families) {
        this.changeover = changeover;
        this.families = families;
        step = new int[families.size()];
        long count = 1;
        for (int family = 0; family < step.length; family++) {
            step[family] = (int) count;
            count = Math.min(
                    Integer.MAX_VALUE / 2, count * (families.get(family).size() + 1));
        }
        states = (int) count;
    }

    /** Minutes from the first start to the end of the last job; 0 where it is not known, or no order keeps every last minute. */
    int shortest() {
        if ((long) states * families.size() > MOST_STATES) return 0;
        for (int at = 0; at < states * families.size(); at++) stands.add(List.of());
        for (int family = 0; family < families.size(); family++) add(0, family, new Stand(0, 0), 0);
        for (int state = 1; state < states - 1; state++)
            for (int last = 0; last < families.size(); last++) extend(state, last);
        return stands.subList((states - 1) * families.size(), states * families.size()).stream()
                .flatMap(List::stream)
                .mapToInt(Stand::end)
                .min()
                .orElse(0);
    }

    private void extend(int state, int last) {
        int at = state * families.size() + last;
        for (Stand stand : stands.get(at))
            for (int next = 0; next < families.size(); next++) add(state, next, stand, changeover[last][next]);
        stands.set(at, List.of());
    }

    private void add(int state, int family, Stand before, int changed) {
        int done = state / step[family] % (families.get(family).size() + 1);
        if (done == families.get(family).size()) return;
        Part part = families.get(family).get(done);
        int minutes = before.minutes + changed + part.minutes;
        if (minutes > part.lastMinute) return;
        keep(
                (state + step[family]) * families.size() + family,
                new Stand(minutes, Math.max(before.end, minutes + part.tail)));
    }

    private void keep(int at, Stand stand) {
        List<Stand> there = stands.get(at);
        for (Stand other : there) if (other.isNoWorseThan(stand)) return;
        if (there.isEmpty()) stands.set(at, there = new ArrayList<>(2));
        there.removeIf(stand::isNoWorseThan);
        there.add(stand);
    }
}
