package dawnkettle.plan;

import java.time.Instant;

/**
 * One van.
 *
 * @param departs when it leaves; the packs must stand ready {@code loadMinutes} before
 * @param packedBy when its last lot is packed and cold
 * @param lateMinutes minutes by which that is too late; 0 where all is well
 */
public record PlannedRoute(
        String route, Instant departs, int loadMinutes, int weight, Instant packedBy, int lateMinutes) {
    public Instant packBy() {
        return departs.minusSeconds(60L * loadMinutes);
    }
}
