package dawnkettle.floor;

/**
 * How long to look for a better run.
 *
 * @param decodes whole schedules that may be built; the same number and seed give the same run
 * @param guardMillis milliseconds after which the search stops all the same; the run is then marked so
 * @param moving is called now and then while it moves, from any thread
 */
public record Budget(long decodes, long seed, long guardMillis, Runnable moving) {
    /** Where nobody wants to know whether it moves. */
    public Budget(long decodes, long seed, long guardMillis) {
        this(decodes, seed, guardMillis, () -> {});
    }

    /** The same with other bounds. */
    public Budget within(long most, long millis) {
        return new Budget(most, seed, millis, moving);
    }
}
