package dawnkettle.floor;

/**
 * How long to look for a better run.
 *
 * @param decodes whole schedules that may be built; the same number and seed give the same run
 * @param guardMillis milliseconds after which the search stops all the same; the run is then marked so
 */
public record Budget(long decodes, long seed, long guardMillis) {}
