package dawnkettle.night;

/** No plan came out, and what stands in its place says so: told to a person as it is. */
final class NoPlan extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NoPlan(String message, RuntimeException cause) {
        super(message, cause);
    }
}
