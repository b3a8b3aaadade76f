package dawnkettle.plan;

import dawnkettle.measure.Mass;
import java.time.Instant;

/**
 * One step of one batch at one station.
 *
 * @param seq step of the recipe, from 1
 * @param place which place of the station, from 1
 * @param occupies mass it takes of a station that counts by mass; zero elsewhere
 */
public record PlannedOperation(
        String batch,
        int seq,
        String stage,
        String station,
        int place,
        Instant start,
        Instant end,
        int halfHands,
        Mass occupies) {}
