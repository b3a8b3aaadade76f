package dawnkettle.store;

import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/** Mails that came in, by where they lay and by what they were: only ever added. */
public final class MailRows {
    private final Sql sql;

    MailRows(Sql sql) {
        this.sql = sql;
    }

    /** A mail's place in the mailbox. */
    public record Spot(long validity, long uid) {}

    /** Where mails lay that came to their end. */
    public List<Spot> spots() {
        return sql.list(
                row -> new Spot(row.number("validity"), row.number("uid")), "SELECT validity, uid FROM mail_in");
    }

    /** Whether a mail of this id, or with this content, came before from wherever it lay. */
    public boolean isKnown(String messageId, String sha256) {
        return sql.number(
                        "SELECT count(*) AS n FROM mail_in WHERE sha256 = ? OR (message_id = ? AND message_id <> '')",
                        sha256,
                        messageId)
                > 0;
    }

    /** Notes a mail's end, in the transaction that adds what it holds. */
    public void end(Spot spot, String messageId, String sha256, MailEnd end) {
        sql.write(
                """
                INSERT INTO mail_in (validity, uid, message_id, sha256, state, sender, answered, at, note)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)""",
                spot.validity(),
                spot.uid(),
                messageId,
                sha256,
                end.state(),
                end.sender(),
                end.answered(),
                end.at(),
                end.note());
    }

    /** How mails ended since an instant, the oldest first. */
    public List<MailEnd> since(Instant from) {
        return sql.list(MailRows::end, "SELECT * FROM mail_in WHERE at >= ? ORDER BY seq", from);
    }

    /** The number of the last mail. */
    public long lastNumber() {
        return sql.number("SELECT coalesce(max(seq), 0) AS n FROM mail_in");
    }

    private static MailEnd end(Row row) throws SQLException {
        return new MailEnd(
                row.word("state", MailEnd.State.class),
                row.text("sender"),
                row.flag("answered"),
                row.instant("at"),
                row.text("note"));
    }
}
