package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How early the work of one place can be over, seen from how many jobs of each family are done: the least minutes wasted on
 * changeovers and on waiting for jobs to come, over all orders of families. Jobs of a family count as alike but for what any
 * so many of them take, come by and are asked by; jobs come through the stage before no faster than its places let them.
 */
final class FamilyCounts {
    /** Beyond so many states families are lumped together. */
    private static final long MOST_STATES = 300_000;

    /** Minutes that stand for "not reached". */
    private static final int FAR = 1 << 28;
    /** Beyond so many minutes more no end is looked for. */
    private static final int FURTHEST = 1 << 12;

    private final FamilyLump[] lumps;
    private final int[][] changeover;
    private final int[][] feedLess;
    private final Feeding feeding;
    private final int[] step;
    private final int[] waste;
    /** The lump that was last before the last one, by state and lump. */
    private final byte[] lastBefore;

    private final int[] done;
    private final int head;
    private final int shortest;
    private int count;
    private int least;
    private int most;
    private int feed;

    /**
     * @param between minutes between families, no longer than a way round
     * @param wants what the only place is wanted for
     * @param placesBefore places of the stage that all come from at once, or 0
     */
    FamilyCounts(int[][] between, List<Workload.Want> wants, int placesBefore) {
        int[] sizes = new int[between.length];
        wants.forEach(want -> sizes[want.family()]++);
        int[] lumpOf = FamilyLump.lumped(between, sizes, MOST_STATES);
        int number = Arrays.stream(lumpOf).max().orElse(-1) + 1;
        lumps = IntStream.range(0, number)
                .mapToObj(lump -> wants.stream()
                        .filter(want -> lumpOf[want.family()] == lump)
                        .toList())
                .map(FamilyLump::new)
                .toArray(FamilyLump[]::new);
        changeover = leastBetween(between, lumpOf, number);
        feeding = new Feeding(placesBefore, wants);
        feedLess = Arrays.stream(lumps)
                .map(lump -> lump.leastSums(want -> Feeding.minutes(want) - placesBefore * want.minutes()))
                .toArray(int[][]::new);
        head = wants.stream().mapToInt(Workload.Want::head).min().orElse(0);
        shortest = wants.stream().mapToInt(Workload.Want::minutes).min().orElse(0);
        step = new int[number + 1];
        step[0] = 1;
        for (int lump = 0; lump < number; lump++) step[lump + 1] = step[lump] * (lumps[lump].size + 1);
        waste = new int[step[number] * number];
        lastBefore = new byte[waste.length];
        done = new int[number];
    }

    private static int[][] leastBetween(int[][] between, int[] lumpOf, int number) {
        int[][] least = new int[number][number];
        for (int[] row : least) Arrays.fill(row, FAR);
        for (int from = 0; from < between.length; from++)
            for (int to = 0; to < between.length; to++) {
                if (lumpOf[from] < 0 || lumpOf[to] < 0) continue;
                int[] row = least[lumpOf[from]];
                row[lumpOf[to]] = Math.min(row[lumpOf[to]], between[from][to]);
            }
        return least;
    }

    /**
     * Jobs in the order of families that wastes least, where all are to have ended by a minute: of a family those first that
     * are there and are asked for first. None where no order keeps the minute.
     */
    List<Workload.Want> orderBy(int end, Comparator<Workload.Want> asked) {
        var order = new ArrayList<Workload.Want>();
        if (lumps.length == 0 || !canEndBy(end)) return order;
        var left = Arrays.stream(lumps).map(FamilyLump::wants).toList();
        int free = head;
        for (int lump : lumpsInOrder()) {
            int now = free;
            Workload.Want next = left.get(lump).stream()
                    .min(Comparator.comparingInt((Workload.Want want) -> Math.max(0, want.head() - now))
                            .thenComparing(asked))
                    .orElseThrow();
            left.get(lump).remove(next);
            order.add(next);
            free = Math.max(free, next.head()) + next.minutes();
        }
        return order;
    }

    private int[] lumpsInOrder() {
        int state = step[lumps.length] - 1;
        int last = 0;
        for (int lump = 1; lump < lumps.length; lump++)
            if (waste[state * lumps.length + lump] < waste[state * lumps.length + last]) last = lump;
        int[] order = new int[Arrays.stream(lumps).mapToInt(lump -> lump.size).sum()];
        for (int at = order.length - 1; at >= 0; at--) {
            order[at] = last;
            int before = lastBefore[state * lumps.length + last];
            state -= step[last];
            last = before;
        }
        return order;
    }

    /** The first minute from the given one on by which all behind the place may have ended. */
    int endFrom(int minute) {
        if (lumps.length == 0 || canEndBy(minute)) return minute;
        int no = minute;
        int more = 4;
        while (!canEndBy(no + more)) {
            no += more;
            more *= 2;
            if (more > FURTHEST) return minute; // the last minutes themselves can't be kept
        }
        int yes = no + more;
        while (yes - no > 1) {
            int middle = (no + yes) >>> 1;
            if (canEndBy(middle)) yes = middle;
            else no = middle;
        }
        return yes;
    }

    private boolean canEndBy(int end) {
        int[][] last = Arrays.stream(lumps).map(lump -> lump.lastMinutes(end)).toArray(int[][]::new);
        Arrays.fill(waste, FAR);
        Arrays.fill(done, 0);
        int whole = step[lumps.length] - 1;
        for (int state = 0; state < whole; state++) {
            if (state > 0) countOn();
            if (!isReached(state)) continue;
            sumUp();
            for (int next = 0; next < done.length; next++)
                if (done[next] < lumps[next].size) go(state, next, last[next][done[next]]);
        }
        return isReached(whole);
    }

    private boolean isReached(int state) {
        if (state == 0) return true;
        for (int lump = 0; lump < done.length; lump++) if (waste[state * done.length + lump] < FAR) return true;
        return false;
    }

    private void countOn() {
        int lump = 0;
        while (done[lump] == lumps[lump].size) done[lump++] = 0;
        done[lump]++;
    }

    private void sumUp() {
        count = 0;
        least = 0;
        most = 0;
        feed = 0;
        for (int lump = 0; lump < done.length; lump++) {
            count += done[lump];
            least += lumps[lump].least[done[lump]];
            most += lumps[lump].most[done[lump]];
            feed += feedLess[lump][done[lump]];
        }
    }

    /** One more job of a lump, from each lump that may have been last. */
    private void go(int state, int next, int lastMinute) {
        FamilyLump lump = lumps[next];
        int known = Math.max(lump.heads[done[next]], feeding.through(count + 1)) - head - most;
        int took = least + lump.least[done[next] + 1] - lump.least[done[next]];
        int best = FAR;
        int after = 0;
        if (state == 0) best = Math.max(0, known);
        for (int before = 0; before < done.length && state > 0; before++) {
            int wasted = waste[state * done.length + before];
            if (wasted >= FAR) continue;
            int changed = changeover[before][next];
            int so = Math.max(Math.max(wasted + changed, known), fedWaste(next, changed));
            if (so >= best) continue;
            best = so;
            after = before;
        }
        if (best >= FAR || head + took + best > lastMinute) return;
        int at = (state + step[next]) * done.length + next;
        if (best >= waste[at]) return;
        waste[at] = best;
        lastBefore[at] = (byte) after;
    }

    /**
     * The jobs up to this one lie on the places of the stage before until this one starts at the latest, those on other places
     * until an earlier one did: so their minutes there, and the work and changeover between those starts, take time.
     */
    private int fedWaste(int next, int changed) {
        int places = feeding.places();
        if (!feeding.isKnown() || count + 1 < 2 * places) return 0;
        int minutes = feed + feedLess[next][done[next] + 1] - feedLess[next][done[next]] + places * shortest;
        int between = (places - 1) * changed + places * (places - 1) / 2 * shortest;
        return Math.floorDiv(feeding.heads() + minutes + between + places - 1, places) - head;
    }
}
