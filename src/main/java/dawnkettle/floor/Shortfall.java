package dawnkettle.floor;

/**
 * Why a due cannot be kept, whatever is done.
 *
 * @param due whose jobs, with those of every earlier due, cannot all end in time
 * @param binding the stage, the hands or, where {@code leadTimeOnly}, the job that proves it
 * @param earliest the first minute by which they could all have ended at best
 * @param minutesOver by how much that is past the due
 * @param jobsTooMany about how many of them are one too many for the binding stage, rather too high; 0 for lead time
 * @param leadTimeOnly true where one job alone takes too long, so that no station and no hand more would help
 */
public record Shortfall(
        String due, String binding, int earliest, int minutesOver, int jobsTooMany, boolean leadTimeOnly) {}
