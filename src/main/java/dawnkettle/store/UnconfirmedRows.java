package dawnkettle.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What was made while nobody knew whether the clock was right: it hangs on a wall, and is no decision until it is taken. */
public final class UnconfirmedRows {
    private final Sql sql;

    UnconfirmedRows(Sql sql) {
        this.sql = sql;
    }

    /** Soak calls that are no decision yet. */
    public SoakRows calls() {
        return new SoakRows(sql, "unconfirmed_call");
    }

    /** Keeps a plan in its open form; a day that has one keeps it. */
    public void keepPlan(LocalDate productionDate, Instant madeAt, String json) {
        sql.write(
                "INSERT INTO unconfirmed_plan (production_date, made_at, json) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
                productionDate,
                madeAt,
                json);
    }

    /** The plan of a day that is no decision yet, in its open form. */
    public Optional<String> plan(LocalDate productionDate) {
        return sql.first(
                row -> row.text("json"),
                "SELECT json FROM unconfirmed_plan WHERE production_date = ? AND taken_at IS NULL",
                productionDate);
    }

    /** Days of which a call waits for the clock. */
    public List<LocalDate> callDays() {
        return sql.list(
                row -> row.day("production_date"),
                "SELECT production_date FROM unconfirmed_call ORDER BY production_date");
    }

    /** Days of which a plan waits for the clock. */
    public List<LocalDate> planDays() {
        return sql.list(
                row -> row.day("production_date"),
                "SELECT production_date FROM unconfirmed_plan WHERE taken_at IS NULL ORDER BY production_date");
    }

    /** It has become the day's plan. */
    public void planTaken(LocalDate productionDate, Instant now) {
        sql.write("UPDATE unconfirmed_plan SET taken_at = ? WHERE production_date = ?", now, productionDate);
    }

    /** Whether the day's plan began as one that was not confirmed. */
    public boolean isPlanTaken(LocalDate productionDate) {
        return sql.number(
                        "SELECT count(*) AS n FROM unconfirmed_plan WHERE production_date = ? AND taken_at IS NOT NULL",
                        productionDate)
                > 0;
    }

    /** It has become the day's call, or holds for no day. */
    public void dropCall(LocalDate productionDate) {
        sql.write("DELETE FROM unconfirmed_call WHERE production_date = ?", productionDate);
    }

    /** It holds for no day. */
    public void dropPlan(LocalDate productionDate) {
        sql.write("DELETE FROM unconfirmed_plan WHERE production_date = ? AND taken_at IS NULL", productionDate);
    }
}
