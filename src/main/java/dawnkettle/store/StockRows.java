package dawnkettle.store;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import dawnkettle.stock.Holds;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.StockLot;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What is in the house, computed from what was planned and what was written down. */
public final class StockRows {
    private final Sql sql;

    StockRows(Sql sql) {
        this.sql = sql;
    }

    /**
     * Packs in the cold room that are promised to nobody, for planning a production day, first expired first.
     *
     * <p>What the plans in force of earlier days made, less what they gave to orders, less what was sold or lost. A
     * count takes the place of all before it, less what is promised for deliveries after the day of the count; it is
     * meant to be made when the day's vans are gone. Plans of the day itself are left out, so that a revision of it
     * starts from the same stock. Lots that are past their date, held, or lost as a whole, are left out.
     */
    public List<StockLot> finished(Shop shop, LocalDate productionDate) {
        LocalDate lastMaking = shop.calendar().previous(productionDate);
        List<StockLot> stock = new ArrayList<>();
        Holds holds = new RecordRows(sql).holds();
        for (Made made : made(productionDate)) {
            Optional<Count> count = count(made, shop);
            Instant since = count.map(Count::at).orElse(Instant.EPOCH);
            LocalDate promisedAfter = count.map(Count::day).orElse(LocalDate.EPOCH);
            long packs = count.map(Count::packs).orElse(made.packs())
                    - promised(made, productionDate, promisedAfter)
                    - gone(made, since);
            boolean expected = count.map(Count::day)
                    .filter(day -> !day.isBefore(lastMaking))
                    .isEmpty();
            if (packs > 0 && !holds.isHeld(made.lot()) && !isLost(made.lot()))
                stock.add(new StockLot(
                        made.lot(),
                        made.product(),
                        Math.toIntExact(packs),
                        made.packDate(),
                        made.bestBefore(),
                        expected));
        }
        stock.sort(Comparator.comparing(StockLot::bestBefore)
                .thenComparing(StockLot::product)
                .thenComparing(StockLot::lot));
        return stock;
    }

    /**
     * Bought lots counted by mass that are still here, first expired first out, then the oldest: received, less what earlier days' tubs and
     * batches took, less the tubs of the day's own soak call and those of its plan that were to be filled by now.
     */
    public List<BeanLot> beans(Shop shop, LocalDate productionDate, Instant now) {
        return materials(shop, productionDate, now).holdings().stream()
                .filter(lot -> lot.unit() == Material.Unit.KILOGRAM && lot.left() > 0)
                .map(lot -> new BeanLot(lot.lot(), lot.material(), Mass.milligrams(lot.left()), lot.receivedOn()))
                .toList();
    }

    /** All bought lots with what came in and where it went, for days before one and what of that day has begun. */
    public MaterialBook materials(Shop shop, LocalDate productionDate, Instant now) {
        return new MaterialRows(sql, shop).before(productionDate, now);
    }

    /** Packs of a product of a lot, as planned or first counted. */
    private record Made(LotCode lot, String product, long packs, LocalDate packDate, LocalDate bestBefore) {}

    /** A count of a lot's product, and the shop's day it was made on. */
    private record Count(long packs, Instant at, LocalDate day) {}

    private List<Made> made(LocalDate productionDate) {
        return sql.list(StockRows::made, """
                SELECT p.lot, p.product, p.packs, b.pack_date, l.best_before
                FROM plan_pack AS p
                JOIN plan_in_force USING (production_date, revision)
                JOIN plan_batch AS b USING (production_date, revision, lot)
                JOIN plan_label AS l USING (production_date, revision, lot, product)
                WHERE p.production_date < ?1 AND l.best_before >= ?1
                UNION ALL
                SELECT r.lot, r.product, 0, r.day, r.best_before
                FROM record_standing AS r
                WHERE r.kind = 'counted-packs' AND r.day IS NOT NULL AND r.best_before >= ?1
                  AND r.seq = (SELECT min(seq) FROM record_standing WHERE kind = 'counted-packs' AND day IS NOT NULL
                                                             AND lot = r.lot AND product = r.product)
                  AND NOT EXISTS (SELECT 1 FROM plan_pack WHERE lot = r.lot AND product = r.product)""", productionDate);
    }

    private static Made made(Row row) throws SQLException {
        return new Made(
                row.lot("lot"), row.text("product"), row.number("packs"), row.day("pack_date"), row.day("best_before"));
    }

    private Optional<Count> count(Made made, Shop shop) {
        return sql.first(
                row -> new Count(
                        row.number("packs"),
                        row.instant("happened_at"),
                        LocalDate.ofInstant(
                                row.instant("happened_at"), shop.house().zone())),
                """
                SELECT packs, happened_at FROM record_standing WHERE kind = 'counted-packs' AND lot = ? AND product = ?
                ORDER BY happened_at DESC, seq DESC LIMIT 1""",
                made.lot(),
                made.product());
    }

    private long promised(Made made, LocalDate productionDate, LocalDate after) {
        return sql.number("""
                SELECT coalesce(sum(packs), 0) AS n
                FROM plan_allocation JOIN plan_in_force USING (production_date, revision)
                WHERE lot = ? AND product = ? AND production_date < ? AND delivery_date > ?""", made.lot(), made.product(), productionDate, after);
    }

    /** Sold, lost, or destroyed beyond what customers gave back. */
    private long gone(Made made, Instant since) {
        long returned = sql.number(
                "SELECT coalesce(sum(packs), 0) AS n FROM record_standing"
                        + " WHERE kind = 'returned' AND place = 'goods' AND lot = ? AND product = ?",
                made.lot(),
                made.product());
        long destroyed = sum("'destroyed'", made, since);
        return sum("'sold', 'lost-packs'", made, since) + Math.max(0, destroyed - returned);
    }

    private long sum(String kinds, Made made, Instant since) {
        return sql.number("""
                SELECT coalesce(sum(packs), 0) AS n FROM record_standing
                WHERE kind IN ({kinds}) AND lot = ? AND product = ? AND happened_at > ?""".replace("{kinds}", kinds), made.lot(), made.product(), since);
    }

    private boolean isLost(LotCode lot) {
        return sql.number("SELECT count(*) AS n FROM record_standing WHERE kind = 'lost-batch' AND lot = ?", lot) > 0;
    }
}
