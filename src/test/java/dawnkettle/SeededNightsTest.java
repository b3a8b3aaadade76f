package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Nights with one to four mishaps each, and what must hold whatever happens. {@code -Dnights=10000} plays so many,
 * {@code -Dseed=17} begins there; a night that fails names its seed and is played again by {@code -Dseed=… -Dnights=1}.
 */
class SeededNightsTest {
    private static final int NIGHTS = Integer.getInteger("nights", 40);
    private static final long FIRST = Long.getLong("seed", 1);

    /** So many failures say enough. */
    private static final int MOST = Integer.getInteger("failures", 5);

    @Test
    void nothing_is_lost_and_nothing_is_done_twice_unmarked() throws Exception {
        NightCounts all = NightCounts.NONE;
        List<String> failed = new ArrayList<>();
        long began = System.nanoTime();
        int played = 0;
        for (long seed = FIRST; seed < FIRST + NIGHTS && failed.size() < MOST; seed++, played++)
            try (FaultyNight night = new FaultyNight(seed)) {
                List<String> broken = played(night);
                if (broken.isEmpty()) all = all.plus(night.counts());
                else failed.add(told(night, broken));
                if ((seed - FIRST + 1) % 100 == 0) tell(played + 1, began, failed.size(), all);
                if (!broken.isEmpty()) System.out.println(failed.get(failed.size() - 1));
            }
        tell(played, began, failed.size(), all);
        assertThat(failed).isEmpty();
    }

    /** A night that ends in an error is told by its seed as one that broke a law is. */
    private static List<String> played(FaultyNight night) throws IOException {
        try {
            return night.play();
        } catch (IllegalStateException failed) {
            return List.of(failed.toString());
        }
    }

    private static void tell(int played, long began, int failed, NightCounts all) {
        System.out.printf(
                "%d nights from seed %d, %.1f a second, %d failed: %s%n",
                played, FIRST, played / ((System.nanoTime() - began) / 1e9), failed, all);
    }

    private static String told(FaultyNight night, List<String> broken) throws IOException {
        int from = NIGHTS == 1 ? 0 : Math.max(0, night.story.size() - 12);
        return night + "\n  " + String.join("\n  ", broken.stream().limit(6).toList()) + "\n    "
                + String.join("\n    ", night.story.subList(from, night.story.size())) + "\n    "
                + String.join("\n    ", night.reasons()) + "\n";
    }
}
