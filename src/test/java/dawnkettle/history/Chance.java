package dawnkettle.history;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;

/** Chance that falls the same each time: a stream of its own for a purpose and a day, so that one leaves others alone. */
final class Chance {
    private static final long SEED = 20_261_202L;

    private final Random random;

    Chance(String purpose, LocalDate day) {
        long mixed = (SEED * 31 + purpose.hashCode()) * 0x9E3779B97F4A7C15L + day.toEpochDay();
        mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L;
        this.random = new Random(mixed ^ (mixed >>> 27));
    }

    boolean happens(double probability) {
        return random.nextDouble() < probability;
    }

    /** 1 give or take, within three times {@code spread}. */
    double around(double spread) {
        return 1 + spread * Math.max(-3, Math.min(3, random.nextGaussian()));
    }

    int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    <T> T oneOf(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }
}
