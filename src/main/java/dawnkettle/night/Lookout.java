package dawnkettle.night;

/** Who is told that a step was done and that what the ledger holds still adds up; when nothing comes, they raise the alarm. */
public interface Lookout {
    /** Where nobody is. */
    Lookout NONE = () -> {};

    /** Tells them, and returns at once; whether it gets through stops nothing. */
    void stepVerified();
}
