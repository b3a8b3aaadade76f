package dawnkettle.store;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Material;
import dawnkettle.shop.PackUse;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.MaterialBook.Cause;
import dawnkettle.stock.MaterialBook.Use;
import java.math.RoundingMode;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Where bought lots went: received, counted, lost as written down; used as written down or else as planned.
 *
 * <p>A tub of two lots takes the first until it is empty. Coagulant, ingredients and packaging are taken of the lots that the
 * batch names, then of those that must go first.
 */
final class MaterialRows {
    private static final long MILLION = 1_000_000;

    private final Sql sql;
    private final Shop shop;
    private final ZoneId zone;
    private final MaterialBook book = new MaterialBook();
    private final Map<PackUse, Long> worn = new HashMap<>();

    MaterialRows(Sql sql, Shop shop) {
        this.sql = sql;
        this.shop = shop;
        this.zone = shop.house().zone();
    }

    /** The name of a tub on a day, as the moves of its beans have it. */
    static String tub(LocalDate productionDate, String tub) {
        return productionDate + " " + tub;
    }

    /**
     * All that was used for days before one, and of that day the tubs of its soak call and those of its plan that were to
     * be filled by now.
     */
    MaterialBook before(LocalDate productionDate, Instant now) {
        receipts();
        tubs(productionDate, now);
        batches(productionDate);
        packs(productionDate);
        handTaken();
        counts();
        return book.played();
    }

    private void receipts() {
        sql.list(
                row -> {
                    Instant at = row.instant("happened_at");
                    book.came(at, LocalDate.ofInstant(at, zone), (Fact.Received) FactColumns.fact(row));
                    return true;
                },
                "SELECT * FROM record_standing WHERE kind = 'received' ORDER BY happened_at, seq");
    }

    /** Tubs as written down; where a day's tub was not, as its plan in force or else its soak call had it. */
    private void tubs(LocalDate productionDate, Instant now) {
        sql.list(
                row -> {
                    String into = tub(row.day("day"), row.text("tub"));
                    long beans = row.mass("beans_mg").milligrams();
                    book.take(
                            SoakRows.parts(row.text("bean_lots")),
                            new Use(row.instant("at"), Cause.SOAKED, into, beans));
                    return true;
                },
                """
                WITH planned AS (
                    SELECT production_date, tub, bean_lots, beans_mg, fill_at FROM plan_tub
                    JOIN plan_in_force USING (production_date, revision)
                    UNION ALL
                    SELECT production_date, tub, bean_lots, beans_mg, NULL FROM soak_call_tub
                    WHERE production_date NOT IN (SELECT production_date FROM plan)
                )
                SELECT day, place AS tub, lot AS bean_lots, beans_mg, happened_at AS at
                FROM record_standing WHERE kind = 'soaked' AND day <= ?1
                UNION ALL
                SELECT p.production_date AS day, p.tub, p.bean_lots, p.beans_mg, coalesce(c.fill_at, p.fill_at) AS at
                FROM planned AS p
                LEFT JOIN soak_call_tub AS c USING (production_date, tub)
                WHERE (p.production_date < ?1
                       OR p.production_date = ?1 AND (c.tub IS NOT NULL OR p.fill_at <= ?2))
                  AND NOT EXISTS (SELECT 1 FROM record_standing WHERE kind = 'soaked' AND day = p.production_date
                                                             AND place = p.tub)
                ORDER BY at""",
                productionDate,
                now);
    }

    private void batches(LocalDate productionDate) {
        sql.list(
                row -> {
                    batch(row);
                    return true;
                },
                """
                SELECT production_date, lot, recipe, expected_mg, dose_material, dose_mg, material_lots FROM plan_batch
                JOIN plan_in_force USING (production_date, revision)
                WHERE production_date < ? ORDER BY production_date, lot""",
                productionDate);
    }

    private void batch(Row row) throws SQLException {
        List<String> named = SoakRows.parts(row.text("material_lots"));
        Instant noon = noon(row.day("production_date"));
        String lot = row.text("lot");
        Optional<String> dose = row.findText("dose_material");
        if (dose.isPresent())
            book.takeOf(
                    dose.get(),
                    named,
                    new Use(noon, Cause.DOSED, lot, row.mass("dose_mg").milligrams()));
        Mass expected = row.mass("expected_mg");
        for (Ingredient added : ingredients(row.text("recipe"))) {
            Mass mass = expected.times(added.perProduct(), RoundingMode.HALF_UP);
            book.takeOf(added.material(), named, new Use(noon, Cause.ADDED, lot, mass.milligrams()));
        }
    }

    private List<Ingredient> ingredients(String recipe) {
        return shop.recipes().stream()
                .filter(one -> one.code().equals(recipe))
                .findFirst()
                .map(Recipe::ingredients)
                .orElse(List.of());
    }

    private Instant noon(LocalDate day) {
        return day.atTime(12, 0).atZone(zone).toInstant();
    }

    /** Trays, bottles, cases and labels, for the packs that were filled. */
    private void packs(LocalDate productionDate) {
        Map<String, List<PackUse>> packing = shop.costs().details().packing().stream()
                .filter(use -> shop.findMaterial(use.material())
                        .filter(material -> material.unit() == Material.Unit.PIECE)
                        .isPresent())
                .collect(Collectors.groupingBy(PackUse::product));
        sql.list(
                row -> {
                    for (PackUse use : packing.getOrDefault(row.text("product"), List.of())) {
                        long times = row.number(use.per() == PackUse.Per.PACK ? "packs" : "cases");
                        pieces(use, times, noon(row.day("production_date")), row.text("lot"));
                    }
                    return true;
                },
                """
                SELECT p.production_date, p.lot, p.product, l.cases + l.part_cases AS cases,
                       coalesce((SELECT r.packs FROM record_standing AS r
                                 WHERE r.kind = 'packed' AND r.lot = p.lot AND r.product = p.product
                                 ORDER BY r.happened_at DESC, r.seq DESC LIMIT 1), p.packs) AS packs
                FROM plan_pack AS p JOIN plan_in_force USING (production_date, revision)
                JOIN plan_label AS l USING (production_date, revision, lot, product)
                WHERE p.production_date < ? ORDER BY p.production_date, p.lot, p.product""",
                productionDate);
    }

    /** Whole pieces; of what comes back, one more whenever all that were filled so far have worn out another. */
    private void pieces(PackUse use, long times, Instant at, String lot) {
        long before = worn.getOrDefault(use, 0L);
        long now = before + Math.multiplyExact(times, use.pieces().millionths());
        worn.put(use, now);
        long pieces = now / MILLION - before / MILLION;
        if (pieces > 0) book.takeOf(use.material(), List.of(), new Use(at, Cause.PACKED, lot, pieces));
    }

    private void handTaken() {
        sql.list(
                row -> {
                    Cause cause = row.text("kind").equals("used-material") ? Cause.USED : Cause.LOST;
                    book.take(
                            List.of(row.text("lot")),
                            new Use(row.instant("happened_at"), cause, row.text("note"), row.number("amount")));
                    return true;
                },
                "SELECT * FROM record_standing WHERE kind IN ('used-material', 'lost-material') ORDER BY happened_at, seq");
    }

    private void counts() {
        sql.list(
                row -> {
                    book.counted(
                            row.instant("happened_at"),
                            row.text("lot"),
                            row.number("amount"),
                            row.findText("note").orElse(""));
                    return true;
                },
                "SELECT * FROM record_standing WHERE kind = 'counted-material' ORDER BY happened_at, seq");
    }
}
