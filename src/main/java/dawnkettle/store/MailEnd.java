package dawnkettle.store;

import java.time.Instant;

/**
 * How a mail that came in ended.
 *
 * @param sender a customer's code, "owner", "crew", or empty for nobody known
 * @param answered whether a reply was put into the outbox
 * @param note what became of it, in a sentence without addresses
 */
public record MailEnd(State state, String sender, boolean answered, Instant at, String note) {
    /** Its one end. */
    public enum State {
        TAKEN,
        ASKED,
        ASIDE
    }
}
