package dawnkettle.store;

import java.time.Instant;

/** A mail in the outbox; its bytes are fetched by {@link OutboxRows#message}. */
public record QueuedMail(
        String messageId,
        String subject,
        State state,
        int attempts,
        Instant nextTry,
        boolean maybeSent,
        Instant queuedAt,
        String note) {
    /** Where a mail stands. */
    public enum State {
        WAITING,
        SENDING,
        SENT,
        REFUSED
    }
}
