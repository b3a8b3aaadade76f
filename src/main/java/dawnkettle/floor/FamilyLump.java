package dawnkettle.floor;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;

/**
 * Jobs of one place that count as one family: only how many of them are done is told apart. Of any so many of them the first
 * to start is known to start no earlier, and the last to be done to be done no later, than the sorted minutes say.
 */
final class FamilyLump {
    final int size;
    /** The earliest start of any that is done after so many others. */
    final int[] heads;
    /** Minutes that so many of them take at least and at most. */
    final int[] least;

    final int[] most;
    private final List<Workload.Want> wants;

    FamilyLump(List<Workload.Want> wants) {
        this.wants = wants;
        size = wants.size();
        heads = wants.stream().mapToInt(Workload.Want::head).sorted().toArray();
        least = leastSums(Workload.Want::minutes);
        most = leastSums(want -> -want.minutes());
        for (int count = 0; count <= size; count++) most[count] = -most[count];
    }

    List<Workload.Want> wants() {
        return new ArrayList<>(wants);
    }

    /** The least sum of so many of the values, by count. */
    int[] leastSums(ToIntFunction<Workload.Want> value) {
        int[] sums = new int[size + 1];
        int[] sorted = wants.stream().mapToInt(value).sorted().toArray();
        for (int count = 0; count < size; count++) sums[count + 1] = sums[count] + sorted[count];
        return sums;
    }

    /** By when so many and one more must be done, where the last job of the day is to have ended by a minute. */
    int[] lastMinutes(int end) {
        return wants.stream()
                .mapToInt(want -> Math.min(want.ties().last().minute(), end - want.tail()))
                .sorted()
                .toArray();
    }

    /**
     * The wants by families, some families lumped together until there are at most so many states; each family is in one
     * lump.
     */
    static int[] lumped(int[][] changeover, int[] sizes, long mostStates) {
        int[] lump = IntStream.range(0, sizes.length).toArray();
        while (states(lump, sizes) > mostStates && join(lump, sizes, changeover)) continue;
        int[] used = Arrays.stream(lump)
                .filter(one -> sizes[one] > 0)
                .distinct()
                .sorted()
                .toArray();
        return Arrays.stream(lump)
                .map(one -> Math.max(-1, Arrays.binarySearch(used, one)))
                .toArray();
    }

    /** Numbers of jobs done, by lump, times the lump that was last. */
    private static long states(int[] lump, int[] sizes) {
        int[] total = new int[sizes.length];
        for (int family = 0; family < sizes.length; family++) total[lump[family]] += sizes[family];
        long states = Arrays.stream(total).filter(size -> size > 0).count();
        for (int size : total) states = Math.min(Integer.MAX_VALUE, states * (size + 1));
        return states;
    }

    /** Joins the two lumps between which a changeover takes least; false where there is but one. */
    private static boolean join(int[] lump, int[] sizes, int[][] changeover) {
        int least = Integer.MAX_VALUE;
        int keep = -1;
        int away = -1;
        for (int one = 0; one < sizes.length; one++)
            for (int other = 0; other < sizes.length; other++) {
                int minutes = changeover[one][other] + changeover[other][one];
                if (lump[one] >= lump[other] || sizes[one] == 0 || sizes[other] == 0 || minutes >= least) continue;
                least = minutes;
                keep = lump[one];
                away = lump[other];
            }
        for (int family = 0; family < lump.length; family++) if (lump[family] == away) lump[family] = keep;
        return keep >= 0;
    }
}
