package dawnkettle.store;

import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/** What was noted of the machine's clock: that it jumped, that the ledger was left alone for long, that a person vouched. */
public final class ClockRows {
    private final Sql sql;

    ClockRows(Sql sql) {
        this.sql = sql;
    }

    /** What can be noted of a clock. */
    public enum Kind {
        /** The ledger was not written to for more working days than a shop leaves it alone. */
        GAP,
        /** The clock and the machine's own count of seconds went apart. */
        JUMP,
        /** A person said that it is right. */
        CONFIRMED
    }

    /**
     * One note.
     *
     * @param seq its place among all
     * @param day the date that the clock showed
     * @param boot which start of the machine it was
     */
    public record Noted(long seq, Kind kind, Instant at, LocalDate day, String boot, String note) {}

    public void note(Kind kind, Instant at, LocalDate day, String boot, String note) {
        sql.write(
                "INSERT INTO clock_event (kind, at, day, boot, note) VALUES (?, ?, ?, ?, ?)",
                kind,
                at,
                day,
                boot,
                note);
    }

    /** The last note of a kind. */
    public Optional<Noted> last(Kind kind) {
        return sql.first(ClockRows::noted, "SELECT * FROM clock_event WHERE kind = ? ORDER BY seq DESC LIMIT 1", kind);
    }

    /** When something was last written of the night's steps; what a clock shows is not before that. */
    public Optional<Instant> newest() {
        return newest(sql);
    }

    static Optional<Instant> newest(Sql sql) {
        return sql.first(row -> row.instant("at"), "SELECT at FROM step_event ORDER BY seq DESC LIMIT 1");
    }

    private static Noted noted(Row row) throws SQLException {
        return new Noted(
                row.number("seq"),
                row.word("kind", Kind.class),
                row.instant("at"),
                row.day("day"),
                row.text("boot"),
                row.text("note"));
    }
}
