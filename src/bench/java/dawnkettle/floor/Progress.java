package dawnkettle.floor;

/** Tells on a terminal how far the measuring is; in a pipe it is silent. */
final class Progress {
    private static final boolean SEEN = System.console() != null;

    private Progress() {}

    static void at(String what) {
        if (SEEN) System.err.print("\r\u001b[K" + what);
    }

    static void done() {
        at("");
    }
}
