package dawnkettle.store;

import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.List;

/** What the plans in force send to customers, by the day of delivery. */
public final class DeliveryRows {
    private final Sql sql;

    DeliveryRows(Sql sql) {
        this.sql = sql;
    }

    /** Packs of a lot for a customer on a day. */
    public record Planned(LocalDate date, String customer, String product, LotCode lot, long packs) {}

    /** Deliveries of a stretch as planned, by day, customer and product. */
    public List<Planned> planned(LocalDate fromInclusive, LocalDate untilExclusive) {
        return sql.list(
                row -> new Planned(
                        row.day("delivery_date"),
                        row.text("customer"),
                        row.text("product"),
                        row.lot("lot"),
                        row.number("packs")),
                """
                SELECT delivery_date, customer, product, lot, sum(packs) AS packs
                FROM plan_allocation JOIN plan_in_force USING (production_date, revision)
                WHERE delivery_date >= ? AND delivery_date < ?
                GROUP BY delivery_date, customer, product, lot
                ORDER BY delivery_date, customer, product, lot""",
                fromInclusive,
                untilExclusive);
    }
}
