package dawnkettle.plan;

import java.math.BigDecimal;
import java.time.Instant;

/**
 * How good the run is, and how far at most from the best possible.
 *
 * @param lateMinutes minutes late, summed over the routes
 * @param finish when the last step ends
 * @param lowerBoundFinish no run of these batches ends earlier
 * @param gapPercent finish over bound, minus one, of the span from the first possible start
 */
public record Quality(
        int lateMinutes,
        Instant finish,
        Instant lowerBoundFinish,
        BigDecimal gapPercent,
        long decodes,
        long decodeBudget,
        boolean stoppedEarly) {
    /** The same run with vans that are late by so many minutes in all. */
    Quality with(int lateMinutes) {
        return new Quality(lateMinutes, finish, lowerBoundFinish, gapPercent, decodes, decodeBudget, stoppedEarly);
    }
}
