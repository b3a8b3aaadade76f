package dawnkettle.floor;

import java.util.Arrays;

/** What stands on one place, in order of its start. */
final class Row {
    final long[] taken;
    private int[] starts = new int[16];
    private int[] ends = new int[16];
    private int[] families = new int[16];
    private int size;

    Row(int span) {
        taken = Minutes.ofDay(span);
    }

    /** The given minute where both neighbours leave time to change over, or the next one worth a try. */
    int clearFrom(int start, int minutes, int family, int[][] setup) {
        int next = size;
        while (next > 0 && starts[next - 1] >= start) next--;
        int clear = start;
        if (next > 0) clear = Math.max(clear, ends[next - 1] + setup[families[next - 1]][family]);
        if (next < size && clear + minutes + setup[family][families[next]] > starts[next])
            clear = Math.max(clear, ends[next] + setup[families[next]][family]);
        return clear;
    }

    void add(int family, int start, int end) {
        if (size == starts.length) grow();
        int at = size++;
        while (at > 0 && isAfter(at - 1, start, end)) {
            starts[at] = starts[at - 1];
            ends[at] = ends[at - 1];
            families[at] = families[at - 1];
            at--;
        }
        starts[at] = start;
        ends[at] = end;
        families[at] = family;
        Minutes.take(taken, start, end);
    }

    private boolean isAfter(int at, int start, int end) {
        return starts[at] > start || (starts[at] == start && ends[at] > end);
    }

    void remove(int family, int start, int end) {
        int at = size - 1;
        while (starts[at] != start || ends[at] != end || families[at] != family) at--;
        int rest = --size - at;
        System.arraycopy(starts, at + 1, starts, at, rest);
        System.arraycopy(ends, at + 1, ends, at, rest);
        System.arraycopy(families, at + 1, families, at, rest);
        Minutes.free(taken, start, end);
    }

    private void grow() {
        starts = Arrays.copyOf(starts, size * 2);
        ends = Arrays.copyOf(ends, size * 2);
        families = Arrays.copyOf(families, size * 2);
    }

    int changeovers(int[][] setup) {
        int count = 0;
        for (int at = 1; at < size; at++) if (setup[families[at - 1]][families[at]] > 0) count++;
        return count;
    }
}
