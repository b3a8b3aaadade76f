package dawnkettle.floor;

/**
 * One step of a job.
 *
 * @param stage any station of this stage may do it
 * @param minutes how long; may be 0
 * @param halfHands half people bound for its whole length; 0 for none
 * @param longestWait minutes it may start at most after the step before has ended; {@link #ANY_WAIT} where it may stand
 * @param load what it takes of a shared station (grams); 0 elsewhere
 */
public record Operation(String stage, int minutes, int halfHands, int longestWait, long load) {
    public static final int ANY_WAIT = Integer.MAX_VALUE;
}
