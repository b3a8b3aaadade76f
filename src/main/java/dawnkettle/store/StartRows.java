package dawnkettle.store;

import java.time.Instant;

/** Each start of the service, and whether it ended as it was told to; the last few are kept. */
public final class StartRows {
    private static final int KEPT = 200;

    private final Sql sql;

    StartRows(Sql sql) {
        this.sql = sql;
    }

    /** Notes a start. @return its number */
    public long note(Instant now) {
        return sql.inTransaction(() -> {
            sql.write("INSERT INTO service_start (at) VALUES (?)", now);
            long number = sql.number("SELECT max(seq) AS n FROM service_start");
            sql.write("DELETE FROM service_start WHERE seq <= ?", number - KEPT);
            return number;
        });
    }

    /** It was told to stop, and did. */
    public void ended(long start, Instant now) {
        sql.write("UPDATE service_start SET ended_at = ? WHERE seq = ?", now, start);
    }

    /** How many of those since an instant died: they neither ended nor are they the one at work. */
    public int died(Instant from, long atWork) {
        return (int) sql.number(
                "SELECT count(*) AS n FROM service_start WHERE ended_at IS NULL AND at >= ? AND seq <> ?",
                from,
                atWork);
    }
}
