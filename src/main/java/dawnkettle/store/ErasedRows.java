package dawnkettle.store;

import java.time.Instant;
import java.util.List;

/** Mails whose words were taken out of the ledger, and that they were: when, why, how many. */
public final class ErasedRows {
    private final Sql sql;

    ErasedRows(Sql sql) {
        this.sql = sql;
    }

    /** Mails that are over with, sent or given up, and still hold their words, the oldest first. */
    public List<String> kept() {
        return sql.list(row -> row.text("message_id"), """
                SELECT message_id FROM outbox WHERE state IN ('sent', 'refused') AND length(message) > 0
                ORDER BY queued_at, message_id""");
    }

    /** The same of those that were queued before an instant. */
    public List<String> keptBefore(Instant before) {
        return sql.list(row -> row.text("message_id"), """
                SELECT message_id FROM outbox
                WHERE state IN ('sent', 'refused') AND length(message) > 0 AND queued_at < ?
                ORDER BY queued_at, message_id""", before);
    }

    /** Takes subject and words out of these mails; that they were sent, and when, stays. */
    public void blank(List<String> messageIds, Instant now, String why) {
        sql.inTransaction(() -> {
            for (String id : messageIds)
                sql.write("UPDATE outbox SET subject = '', message = x'' WHERE message_id = ?", id);
            sql.write("INSERT INTO erasure (at, mails, why) VALUES (?, ?, ?)", now, messageIds.size(), why);
        });
        // What was deleted stays readable in free pages and in the write-ahead file until both are written anew.
        sql.script("VACUUM");
        sql.list(row -> true, "PRAGMA wal_checkpoint(TRUNCATE)");
    }

    /** What was erased, in words, the last first. */
    public List<String> told() {
        return sql.list(
                row -> row.instant("at") + " " + row.text("why") + ": " + row.number("mails") + " mails",
                "SELECT * FROM erasure ORDER BY seq DESC");
    }
}
