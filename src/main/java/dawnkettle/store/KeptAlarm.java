package dawnkettle.store;

import java.time.Instant;
import java.util.Optional;

/**
 * What a person was to know at once, as the ledger keeps it.
 *
 * @param key its name for good
 * @param usefulBy until when doing something about it is of use
 * @param passes whether it is told once and is then over
 * @param toldAt when the mail that tells it was kept
 */
public record KeptAlarm(
        String key,
        String happened,
        String safe,
        String todo,
        Optional<Instant> usefulBy,
        boolean passes,
        Optional<Instant> toldAt) {}
