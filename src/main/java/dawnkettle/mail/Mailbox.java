package dawnkettle.mail;

import java.util.function.Predicate;

/** Where mail comes in. */
public interface Mailbox {
    /** A shop without a mailbox. */
    Mailbox NONE = (isKnown, taker) -> {};

    /**
     * Shows each mail that is not known yet to {@code taker}, the oldest first, and marks it once the taker is done with
     * it; one over which the taker fails stays as it was and is shown again.
     *
     * @param isKnown whether a mail came to its end before, so that it need not be fetched; asked on any thread
     * @param taker says whether the mail is dealt with; else it is marked for a person to look at
     * @throws dawnkettle.trouble.DeviceAway where the mailbox can't be read to its end; what was taken stays taken
     */
    void look(Predicate<Arrived.Place> isKnown, Predicate<Arrived> taker);
}
