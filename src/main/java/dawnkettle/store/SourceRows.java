package dawnkettle.store;

import dawnkettle.stock.LotCode;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.MaterialBook.Cause;
import dawnkettle.stock.MaterialBook.Holding;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Web.Source;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which bought lots went into which batch, and how much of each.
 *
 * <p>A tub of two lots is mixed: each of its batches carries both, by their shares of the tub; what the tub gave of a lot and
 * what was left in it add up to what the lot gave, to the milligram.
 */
final class SourceRows {
    private final Sql sql;
    private final Map<String, Holding> holdings = new HashMap<>();
    private final Map<String, Map<String, Long>> tubs = new HashMap<>();
    private final Map<LotCode, Map<String, Long>> amounts = new LinkedHashMap<>();
    private final Set<String> named = new HashSet<>();

    SourceRows(Sql sql, MaterialBook book) {
        this.sql = sql;
        book.holdings().forEach(lot -> holdings.put(lot.lot(), lot));
        for (MaterialBook.Move move : book.moves()) {
            if (move.cause() == Cause.SOAKED)
                tubs.computeIfAbsent(move.into(), any -> new LinkedHashMap<>())
                        .merge(move.lot(), -move.change(), Long::sum);
            if (move.cause() == Cause.DOSED || move.cause() == Cause.ADDED || move.cause() == Cause.PACKED)
                add(new LotCode(move.into()), move.lot(), -move.change());
        }
    }

    private void add(LotCode batch, String lot, long amount) {
        if (amount > 0)
            amounts.computeIfAbsent(batch, any -> new LinkedHashMap<>()).merge(lot, amount, Long::sum);
    }

    List<Source> all() {
        tubsIntoBatches();
        List<Source> all = new ArrayList<>();
        amounts.forEach((batch, lots) -> lots.forEach((lot, amount) -> {
            named.add(batch + " " + lot);
            all.add(new Source(
                    lot,
                    holdings.get(lot).material(),
                    Optional.of(new Quantity(amount, holdings.get(lot).unit())),
                    batch));
        }));
        namedByPlans(all);
        recordedWithoutPlan(all);
        return all;
    }

    private void tubsIntoBatches() {
        Map<String, long[]> poured = new HashMap<>();
        sql.list(
                row -> {
                    String tub = MaterialRows.tub(row.day("production_date"), row.text("tub"));
                    long[] until = poured.computeIfAbsent(tub, any -> new long[1]);
                    long from = until[0];
                    until[0] += row.number("beans_mg");
                    pour(
                            tubs.getOrDefault(tub, Map.of()),
                            row.lot("lot"),
                            new Stretch(from, until[0], row.number("tub_mg")));
                    return true;
                },
                """
                SELECT b.production_date, b.lot, b.tub, b.beans_mg,
                       (SELECT sum(t.beans_mg) FROM plan_tub AS t
                        WHERE t.production_date = b.production_date AND t.revision = b.revision AND t.tub = b.tub) AS tub_mg
                FROM plan_batch_tub AS b JOIN plan_in_force USING (production_date, revision)
                ORDER BY b.production_date, b.tub, b.lot""");
    }

    /** From where to where in a tub's beans a batch takes its own. */
    private record Stretch(long from, long until, long all) {
        long of(long lot) {
            return part(until, lot) - part(from, lot);
        }

        private long part(long at, long lot) {
            return BigInteger.valueOf(at)
                    .multiply(BigInteger.valueOf(lot))
                    .divide(BigInteger.valueOf(Math.max(1, all)))
                    .longValueExact();
        }
    }

    private void pour(Map<String, Long> inTub, LotCode batch, Stretch stretch) {
        inTub.forEach((lot, amount) -> add(batch, lot, stretch.of(amount)));
    }

    /** Lots that a batch's sheet names though the books hold nothing of them. */
    private void namedByPlans(List<Source> all) {
        sql.list(
                row -> {
                    LotCode batch = row.lot("lot");
                    for (String lot : SoakRows.parts(row.text("material_lots")))
                        if (!LotCode.isOne(lot) && named.add(batch + " " + lot)) all.add(unknown(lot, batch));
                    return true;
                },
                "SELECT lot, material_lots FROM plan_batch JOIN plan_in_force USING (production_date, revision)");
    }

    /** Batches of days without a plan: any lot that was soaked for that day may be in them. */
    private void recordedWithoutPlan(List<Source> all) {
        sql.list(
                row -> {
                    LotCode batch = row.lot("batch");
                    if (named.add(batch + " " + row.text("lot"))) all.add(unknown(row.text("lot"), batch));
                    return true;
                },
                """
                SELECT DISTINCT y.lot AS batch, s.lot FROM record_standing AS y
                JOIN record_standing AS s ON s.kind = 'soaked' AND substr(y.lot, 1, 6) =
                     substr(s.day, 3, 2) || substr(s.day, 6, 2) || substr(s.day, 9, 2)
                WHERE y.kind = 'yielded' AND NOT EXISTS (SELECT 1 FROM plan_batch AS b WHERE b.lot = y.lot)""");
    }

    private Source unknown(String lot, LotCode batch) {
        String material = holdings.containsKey(lot) ? holdings.get(lot).material() : "";
        return new Source(lot, material, Optional.empty(), batch);
    }
}
