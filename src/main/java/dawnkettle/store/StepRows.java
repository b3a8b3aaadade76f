package dawnkettle.store;

import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The journal of the night's steps: each is done once a day and revision. */
public final class StepRows {
    private final Sql sql;

    StepRows(Sql sql) {
        this.sql = sql;
    }

    /** Notes that a step is due; a step noted before stays as it is. */
    public void due(StepKey key, Instant dueAt, Instant now) {
        sql.write("""
                INSERT INTO step (step, business_date, revision, state, due_at, changed_at)
                VALUES (?, ?, ?, 'due', ?, ?) ON CONFLICT DO NOTHING""", key.step(), key.businessDate(), key.revision(), dueAt, now);
    }

    /**
     * Starts a step that is due, has failed, or was started before a crash.
     *
     * @return false where it is done or skipped, and nothing is to be done
     */
    public boolean start(StepKey key, Instant now) {
        return sql.inTransaction(() -> {
            if (find(key).orElseThrow().state().isFinal()) return false;
            return move(key, StepRow.State.STARTED, now, "");
        });
    }

    public void done(StepKey key, Instant now, String note) {
        move(key, StepRow.State.DONE, now, note);
    }

    public void failed(StepKey key, Instant now, String why) {
        move(key, StepRow.State.FAILED, now, why);
    }

    /** It is too late for it, or the owner does without. */
    public void skipped(StepKey key, Instant now, String why) {
        move(key, StepRow.State.SKIPPED, now, why);
    }

    public Optional<StepRow> find(StepKey key) {
        return sql.first(
                StepRows::row,
                "SELECT * FROM step WHERE step = ? AND business_date = ? AND revision = ?",
                key.step(),
                key.businessDate(),
                key.revision());
    }

    public boolean isDone(StepKey key) {
        return find(key).filter(row -> row.state() == StepRow.State.DONE).isPresent();
    }

    /** Steps of a day, in the order they are due. */
    public List<StepRow> of(LocalDate businessDate) {
        return sql.list(
                StepRows::row,
                "SELECT * FROM step WHERE business_date = ? ORDER BY due_at, step, revision",
                businessDate);
    }

    /** The latest day of which a step was ever due; empty in a new ledger. */
    public Optional<LocalDate> lastDay() {
        return sql.first(
                row -> row.day("business_date"),
                "SELECT business_date FROM step WHERE business_date > '1970-01-01' ORDER BY business_date DESC LIMIT 1");
    }

    /** Steps that are neither done nor skipped and were due by now, in the order they were due. */
    public List<StepRow> open(Instant now) {
        return sql.list(StepRows::row, """
                SELECT * FROM step WHERE state NOT IN ('done', 'skipped') AND due_at <= ?
                ORDER BY due_at, step, revision""", now);
    }

    private boolean move(StepKey key, StepRow.State state, Instant now, String note) {
        return sql.write("""
                        UPDATE step SET state = ?, changed_at = ?, note = ?, attempts = attempts + (? = 'started')
                        WHERE step = ? AND business_date = ? AND revision = ?""", state, now, note, state, key.step(), key.businessDate(), key.revision()) == 1;
    }

    private static StepRow row(Row row) throws SQLException {
        return new StepRow(
                new StepKey(row.text("step"), row.day("business_date"), row.whole("revision")),
                row.word("state", StepRow.State.class),
                row.instant("due_at"),
                row.whole("attempts"),
                row.instant("changed_at"),
                row.text("note"));
    }
}
