package dawnkettle.store;

import dawnkettle.measure.Mass;
import dawnkettle.stock.BeanLot;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is left of bought lots: received and counted as written down, used as written down or else as planned.
 *
 * <p>A tub of two lots takes the first until it is empty. A coagulant is taken from its oldest lot. Where more was used
 * than a lot held, nothing of it is left.
 */
final class MaterialsLeft {
    private final Sql sql;
    private final ZoneId zone;
    private final Map<String, Lot> lots = new LinkedHashMap<>();

    /** One supplier's lot as it goes down. */
    private static final class Lot {
        private final String material;
        private final String code;
        private final LocalDate receivedOn;
        private Mass left = Mass.ZERO;

        Lot(String material, String code, LocalDate receivedOn) {
            this.material = material;
            this.code = code;
            this.receivedOn = receivedOn;
        }

        Mass take(Mass wanted) {
            Mass taken = Mass.min(wanted, left);
            left = left.minus(taken);
            return wanted.minus(taken);
        }
    }

    /** Something that changes what is left, at its time. */
    private record Change(Instant at, Runnable applied) {}

    MaterialsLeft(Sql sql, ZoneId zone) {
        this.sql = sql;
        this.zone = zone;
    }

    List<BeanLot> before(LocalDate productionDate, Instant now) {
        List<Change> changes = new ArrayList<>();
        changes.addAll(receipts());
        changes.addAll(tubs(productionDate, now));
        changes.addAll(doses(productionDate));
        changes.addAll(counts());
        changes.stream()
                .sorted(Comparator.comparing(Change::at))
                .forEach(change -> change.applied().run());
        return lots.values().stream()
                .filter(lot -> !lot.left.isZero())
                .sorted(Comparator.comparing((Lot lot) -> lot.receivedOn).thenComparing(lot -> lot.code))
                .map(lot -> new BeanLot(lot.code, lot.material, lot.left, lot.receivedOn))
                .toList();
    }

    private List<Change> receipts() {
        return sql.list(
                this::receipt,
                "SELECT * FROM record_standing WHERE kind = 'received' AND unit = 'kilogram' ORDER BY happened_at, seq");
    }

    private Change receipt(Row row) throws SQLException {
        Instant at = row.instant("happened_at");
        Lot lot = lots.computeIfAbsent(
                row.text("lot"), code -> new Lot(material(row), code, LocalDate.ofInstant(at, zone)));
        Mass mass = row.mass("amount");
        return new Change(at, () -> lot.left = lot.left.plus(mass));
    }

    private static String material(Row row) {
        try {
            return row.text("material");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private List<Change> counts() {
        return sql.list(
                row -> {
                    String code = row.text("lot");
                    Mass left = row.mass("amount");
                    return new Change(row.instant("happened_at"), () -> {
                        if (lots.containsKey(code)) lots.get(code).left = left;
                    });
                },
                "SELECT * FROM record_standing WHERE kind = 'counted-material' AND unit = 'kilogram' ORDER BY happened_at, seq");
    }

    /** Tubs as written down; where a day's tub was not, as its plan in force or else its soak call had it. */
    private List<Change> tubs(LocalDate productionDate, Instant now) {
        return sql.list(
                row -> {
                    List<String> codes = SoakRows.parts(row.text("bean_lots"));
                    Mass beans = row.mass("beans_mg");
                    return new Change(row.instant("at"), () -> take(codes, beans));
                },
                """
                WITH planned AS (
                    SELECT production_date, tub, bean_lots, beans_mg, fill_at FROM plan_tub
                    JOIN plan_in_force USING (production_date, revision)
                    UNION ALL
                    SELECT production_date, tub, bean_lots, beans_mg, NULL FROM soak_call_tub
                    WHERE production_date NOT IN (SELECT production_date FROM plan)
                )
                SELECT lot AS bean_lots, beans_mg, happened_at AS at FROM record_standing WHERE kind = 'soaked' AND day <= ?1
                UNION ALL
                SELECT p.bean_lots, p.beans_mg, coalesce(c.fill_at, p.fill_at) AS at FROM planned AS p
                LEFT JOIN soak_call_tub AS c USING (production_date, tub)
                WHERE (p.production_date < ?1
                       OR p.production_date = ?1 AND (c.tub IS NOT NULL OR p.fill_at <= ?2))
                  AND NOT EXISTS (SELECT 1 FROM record_standing WHERE kind = 'soaked' AND day = p.production_date
                                                         AND place = p.tub)
                ORDER BY at""",
                productionDate,
                now);
    }

    private List<Change> doses(LocalDate productionDate) {
        return sql.list(
                row -> {
                    String material = row.text("dose_material");
                    Mass mass = row.mass("dose_mg");
                    Instant noon = row.day("production_date")
                            .atTime(12, 0)
                            .atZone(zone)
                            .toInstant();
                    return new Change(noon, () -> take(codesOf(material), mass));
                },
                """
                SELECT production_date, dose_material, dose_mg FROM plan_batch
                JOIN plan_in_force USING (production_date, revision)
                WHERE production_date < ? AND dose_material IS NOT NULL ORDER BY production_date, lot""",
                productionDate);
    }

    private List<String> codesOf(String material) {
        return lots.values().stream()
                .filter(lot -> lot.material.equals(material))
                .sorted(Comparator.comparing((Lot lot) -> lot.receivedOn).thenComparing(lot -> lot.code))
                .map(lot -> lot.code)
                .toList();
    }

    private void take(List<String> codes, Mass wanted) {
        Mass still = wanted;
        for (String code : codes)
            if (lots.containsKey(code)) still = lots.get(code).take(still);
    }
}
