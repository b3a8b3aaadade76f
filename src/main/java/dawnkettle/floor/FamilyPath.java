package dawnkettle.floor;

import java.util.Arrays;

/** The order of families that needs the fewest minutes of changeover, each family once. */
final class FamilyPath {
    /** Beyond so many families every order is no longer looked through. */
    private static final int EXACT = 12;

    private static final int FAR = 1 << 29;

    private final int[][] minutes;

    FamilyPath(int[][] minutes) {
        this.minutes = minutes;
    }

    int shortest(int families) {
        int[] members = new int[Integer.bitCount(families)];
        for (int family = 0, at = 0; at < members.length; family++)
            if ((families >> family & 1) == 1) members[at++] = family;
        return members.length > EXACT ? atLeast(members) : exact(members);
    }

    /** As many changeovers as there are families but one, each the shortest there is. */
    private int atLeast(int[] members) {
        int least = FAR;
        for (int from : members) for (int to : members) if (from != to) least = Math.min(least, minutes[from][to]);
        return least * (members.length - 1);
    }

    /** Held and Karp's table: the fewest minutes for a set of families by the last of them. */
    private int exact(int[] members) {
        int size = members.length;
        int[][] least = new int[1 << size][size];
        for (int[] row : least) Arrays.fill(row, FAR);
        for (int one = 0; one < size; one++) least[1 << one][one] = 0;
        for (int set = 1; set < 1 << size; set++)
            for (int last = 0; last < size; last++) if (least[set][last] < FAR) extend(least, set, last, members);
        return Arrays.stream(least[(1 << size) - 1]).min().orElse(0);
    }

    private void extend(int[][] least, int set, int last, int[] members) {
        for (int next = 0; next < members.length; next++) {
            if ((set >> next & 1) == 1) continue;
            int sum = least[set][last] + minutes[members[last]][members[next]];
            int[] row = least[set | 1 << next];
            row[next] = Math.min(row[next], sum);
        }
    }
}
