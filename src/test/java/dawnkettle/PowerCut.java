package dawnkettle;

/** Ends everything at a point of the night, as a machine that goes dark does. */
final class PowerCut extends Error {
    private static final long serialVersionUID = 1L;

    PowerCut(String where) {
        super("the power went " + where, null, false, false);
    }
}
