package dawnkettle.store;

import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Mails that wait to be sent, and those that were. */
public final class OutboxRows {
    private static final String COLUMNS =
            "SELECT message_id, subject, state, attempts, next_try, maybe_sent, queued_at, note ";

    private final Sql sql;

    OutboxRows(Sql sql) {
        this.sql = sql;
    }

    /** Queues a whole message; one queued before under the same id stays as it is. @return whether it was new */
    public boolean queue(String messageId, String subject, byte[] message, Instant now) {
        return sql.write("""
                        INSERT INTO outbox (message_id, subject, message, state, next_try, queued_at, changed_at)
                        VALUES (?, ?, ?, 'waiting', ?, ?, ?) ON CONFLICT DO NOTHING""", messageId, subject, message, now, now, now) == 1;
    }

    /**
     * Mails whose next try has come, the oldest first.
     *
     * @param longestWait what waits longer was put off by a clock that was ahead, and its time has come as well
     */
    public List<QueuedMail> due(Instant now, Duration longestWait) {
        return sql.list(
                OutboxRows::mail,
                COLUMNS + "FROM outbox WHERE state = 'waiting' AND (next_try <= ? OR next_try > ?)"
                        + " ORDER BY queued_at, message_id",
                now,
                now.plus(longestWait));
    }

    /** When a mail is tried next, where one waits. */
    public Optional<Instant> nextTry() {
        return sql.first(
                row -> row.instant("next_try"),
                "SELECT next_try FROM outbox WHERE state = 'waiting' ORDER BY next_try LIMIT 1");
    }

    /** What is not tried any more, since an instant, the oldest first. */
    public List<QueuedMail> refusedSince(Instant from) {
        return sql.list(
                OutboxRows::mail,
                COLUMNS + "FROM outbox WHERE state = 'refused' AND changed_at >= ? ORDER BY queued_at, message_id",
                from);
    }

    /** What waits for another try, the oldest first. */
    public List<QueuedMail> waiting() {
        return sql.list(
                OutboxRows::mail,
                COLUMNS + "FROM outbox WHERE state IN ('waiting', 'sending') ORDER BY queued_at, message_id");
    }

    public Optional<QueuedMail> find(String messageId) {
        return sql.first(OutboxRows::mail, COLUMNS + "FROM outbox WHERE message_id = ?", messageId);
    }

    public byte[] message(String messageId) {
        return sql.first(row -> row.bytes("message"), "SELECT message FROM outbox WHERE message_id = ?", messageId)
                .orElseThrow();
    }

    /** Committed before the first byte leaves. @return false where it is not waiting */
    public boolean sending(String messageId, Instant now) {
        return sql.write("""
                        UPDATE outbox SET state = 'sending', attempts = attempts + 1, changed_at = ?
                        WHERE message_id = ? AND state = 'waiting'""", now, messageId) == 1;
    }

    public void sent(String messageId, Instant now) {
        sql.write(
                "UPDATE outbox SET state = 'sent', changed_at = ?, note = '' WHERE message_id = ? AND state <> 'sent'",
                now,
                messageId);
    }

    /**
     * Waits for another try.
     *
     * @param maybeSent whether it may have gone out all the same, so that the next one must say so
     */
    public void again(String messageId, Instant nextTry, boolean maybeSent, String why) {
        sql.write("""
                UPDATE outbox SET state = 'waiting', next_try = ?, maybe_sent = max(maybe_sent, ?), note = ?
                WHERE message_id = ?""", nextTry, maybeSent, why, messageId);
    }

    /** It will never be sent; the server or a person said so. */
    public void refused(String messageId, Instant now, String why) {
        sql.write(
                "UPDATE outbox SET state = 'refused', changed_at = ?, note = ? WHERE message_id = ?",
                now,
                why,
                messageId);
    }

    /** At the start of the service: what was on its way when it stopped waits again and may have gone out. */
    public int interrupted(Instant now) {
        return sql.write("""
                UPDATE outbox SET state = 'waiting', next_try = ?, maybe_sent = 1,
                                  note = 'the service stopped while it was sent'
                WHERE state = 'sending'""", now);
    }

    private static QueuedMail mail(Row row) throws SQLException {
        return new QueuedMail(
                row.text("message_id"),
                row.text("subject"),
                row.word("state", QueuedMail.State.class),
                row.whole("attempts"),
                row.instant("next_try"),
                row.flag("maybe_sent"),
                row.instant("queued_at"),
                row.text("note"));
    }
}
