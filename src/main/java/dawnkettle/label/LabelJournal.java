package dawnkettle.label;

/** Told what is about to be printed, what came out, and what cannot be known; the night writes it down. */
public interface LabelJournal {
    /** These are about to be sent; nothing of them has left yet. */
    void intended(Confirmed group);

    /** These came out. */
    void confirmed(Confirmed group);

    /** These may have come out, or in part; they are never printed again by themselves. */
    void doubtful(Confirmed group);

    /** The printer waits for a person. */
    default void paused(String why) {}
}
