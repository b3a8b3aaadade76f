package dawnkettle.store;

import java.time.Instant;
import java.time.LocalDate;

/**
 * Something done to the world: a sheet, a run of labels, a mail.
 *
 * @param key its own name for good: the print job's name, the lot and product, the mail's message id
 * @param attempts how often it was begun
 */
public record Effect(
        String key,
        Kind kind,
        LocalDate businessDate,
        State state,
        int attempts,
        Instant intendedAt,
        Instant changedAt,
        String note) {
    /** What goes out. */
    public enum Kind {
        SHEET,
        LABEL,
        MAIL
    }

    /** What is known of it; failed means that surely nothing went out, ambiguous that nobody knows. */
    public enum State {
        INTENDED,
        SENDING,
        DONE,
        FAILED,
        AMBIGUOUS
    }
}
