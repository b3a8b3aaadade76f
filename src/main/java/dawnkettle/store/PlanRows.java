package dawnkettle.store;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.stock.LotCode;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Every revision of every day's plan; the last of a day is in force. */
public final class PlanRows {
    private final Sql sql;

    PlanRows(Sql sql) {
        this.sql = sql;
    }

    /**
     * Keeps a plan with its open form; the same once more changes nothing.
     *
     * @throws IllegalStateException where that revision was kept with other content
     */
    public void keep(DayPlan plan, String json) {
        Heading heading = plan.heading();
        sql.inTransaction(() -> {
            Optional<KeptPlan> kept = find(heading.productionDate(), heading.revision());
            if (kept.isEmpty()) new PlanWriter(sql, plan).write(json);
            else if (!kept.get().json().equals(json))
                throw new IllegalStateException("revision " + heading.revision() + " of " + heading.productionDate()
                        + " is kept already, with other content");
        });
    }

    public Optional<KeptPlan> find(LocalDate productionDate, int revision) {
        return sql.first(
                PlanRows::kept,
                "SELECT * FROM plan WHERE production_date = ? AND revision = ?",
                productionDate,
                revision);
    }

    /** The revision in force. */
    public Optional<KeptPlan> latest(LocalDate productionDate) {
        return sql.first(
                PlanRows::kept,
                "SELECT * FROM plan WHERE production_date = ? ORDER BY revision DESC LIMIT 1",
                productionDate);
    }

    /** Days that have a plan, the oldest first. */
    public List<LocalDate> days() {
        return sql.list(
                row -> row.day("production_date"),
                "SELECT DISTINCT production_date FROM plan ORDER BY production_date");
    }

    /** The number that the next revision of a day gets, from 1. */
    public int nextRevision(LocalDate productionDate) {
        return (int) sql.number(
                "SELECT coalesce(max(revision), 0) + 1 AS n FROM plan WHERE production_date = ?", productionDate);
    }

    /** Who gets packs of a lot, by the plans in force. */
    public List<Destined> destinations(LotCode lot) {
        return sql.list(
                row -> new Destined(
                        row.text("order_number"),
                        row.whole("line"),
                        row.text("customer"),
                        row.text("product"),
                        row.whole("packs"),
                        row.day("delivery_date")),
                """
                SELECT a.* FROM plan_allocation AS a JOIN plan_in_force USING (production_date, revision)
                WHERE a.lot = ? ORDER BY a.delivery_date, a.customer, a.order_number, a.line""",
                lot);
    }

    /** Packs of a lot that go to a customer. */
    public record Destined(
            String order, int line, String customer, String product, int packs, LocalDate deliveryDate) {}

    private static KeptPlan kept(Row row) throws SQLException {
        return new KeptPlan(
                row.day("production_date"),
                row.whole("revision"),
                row.instant("computed_at"),
                row.text("mode"),
                row.text("json"));
    }
}
