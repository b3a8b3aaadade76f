package dawnkettle.floor;

import java.util.Arrays;
import java.util.List;

/** The stage whose jobs go straight on to a place: how early so many of them can have come through it, in any order. */
final class Feeding {
    private final int places;
    /** By number: when so many jobs can have come through at the earliest. */
    private final int[] through;

    private final int heads;

    /** @param places of the stage before; 0 where the jobs come from several stages, or from none */
    Feeding(int places, List<Workload.Want> wants) {
        this.places = places;
        through = new int[wants.size() + 1];
        int[] sorted = wants.stream().mapToInt(Feeding::head).sorted().toArray();
        heads = Arrays.stream(sorted).limit(places).sum();
        if (places > 0) Arrays.stream(sorted).distinct().forEach(head -> raise(head, wants));
    }

    private static int head(Workload.Want want) {
        return want.ties().before().head();
    }

    static int minutes(Workload.Want want) {
        return want.ties().before().minutes();
    }

    /** Of any so many jobs all but the number that can be earlier start no earlier than the threshold. */
    private void raise(int threshold, List<Workload.Want> wants) {
        int[] later = wants.stream()
                .filter(want -> head(want) >= threshold)
                .mapToInt(Feeding::minutes)
                .sorted()
                .toArray();
        int earlier = wants.size() - later.length;
        int sum = 0;
        for (int count = 1; count <= later.length; count++) {
            sum += later[count - 1];
            int at = Math.min(count, places);
            through[earlier + count] = Math.max(through[earlier + count], threshold + (sum + at - 1) / at);
        }
    }

    int through(int count) {
        return through[count];
    }

    boolean isKnown() {
        return places > 0;
    }

    int places() {
        return places;
    }

    /** The earliest starts of as many jobs as there are places, summed. */
    int heads() {
        return heads;
    }
}
