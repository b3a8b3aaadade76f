package dawnkettle.store;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Holds;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.Web;
import dawnkettle.stock.Web.Batch;
import dawnkettle.stock.Web.Feed;
import dawnkettle.stock.Web.Gave;
import dawnkettle.stock.Web.Handed;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Every lot that the ledger knows, with what it was made of and who got it. */
public final class TraceRows {
    /** After every plan; as text it sorts so, too. */
    private static final LocalDate LAST_DAY = LocalDate.of(9999, 12, 31);

    private final Sql sql;

    TraceRows(Sql sql) {
        this.sql = sql;
    }

    /** Everything as it stands at an instant; what is planned for later is part of it. */
    public Web web(Shop shop, Instant now) {
        return web(shop, now, materials(shop, now));
    }

    /** The same where the bought lots are known already. */
    public Web web(Shop shop, Instant now, MaterialBook materials) {
        return sql.inTransaction(() -> new Weaving(shop, now).web(materials));
    }

    /** Bought lots with all that came in and went out, of the same days. */
    public MaterialBook materials(Shop shop, Instant now) {
        return new MaterialRows(sql, shop).before(LAST_DAY, now);
    }

    /** The making days that the ledger has a plan in force of, and what each customer gets of which lots. */
    private final class Weaving {
        private final Shop shop;
        private final Instant now;
        private final Holds holds = new RecordRows(sql).holds();
        private final RecordedLots records = new RecordedLots(sql);

        Weaving(Shop shop, Instant now) {
            this.shop = shop;
            this.now = now;
        }

        Web web(MaterialBook materials) {
            List<Handed> handed = handed();
            Map<LotCode, Batch> batches = batches(handed);
            return new Web(
                    batches.values(), new SourceRows(sql, materials).all(), sql.list(TraceRows::feed, """
                            SELECT lot, into_lot, mass_mg FROM plan_feed
                            JOIN plan_in_force USING (production_date, revision)"""), handed);
        }

        private Map<LotCode, Batch> batches(List<Handed> handed) {
            Map<LotCode, List<Handed>> byLot = new HashMap<>();
            handed.forEach(one ->
                    byLot.computeIfAbsent(one.lot(), any -> new ArrayList<>()).add(one));
            PackStates states = new PackStates(shop, records, byLot);
            Map<LotCode, Map<String, Integer>> filled = filled();
            Map<LotCode, Batch> batches = new TreeMap<>();
            sql.list(
                    row -> {
                        LotCode lot = row.lot("lot");
                        Instant packedAt = row.day("pack_date")
                                .atStartOfDay(shop.house().zone())
                                .toInstant();
                        batches.put(
                                lot,
                                batch(
                                        lot,
                                        row.text("recipe"),
                                        row.mass("expected_mg"),
                                        states.of(lot, packedAt, filled.getOrDefault(lot, Map.of()))));
                        return true;
                    },
                    """
                    SELECT lot, recipe, expected_mg, pack_date FROM plan_batch
                    JOIN plan_in_force USING (production_date, revision)""");
            for (LotCode lot : records.lots()) if (!batches.containsKey(lot)) batches.put(lot, unplanned(lot, states));
            return batches;
        }

        /** A lot that no plan made: from before the first, or of days that were brought in from elsewhere. */
        private Batch unplanned(LotCode lot, PackStates states) {
            Instant start =
                    lot.productionDate().atStartOfDay(shop.house().zone()).toInstant();
            return batch(
                    lot,
                    records.yielded(lot).map(Fact.Yielded::recipe).orElse(""),
                    Mass.ZERO,
                    states.of(lot, start, Map.of()));
        }

        private Batch batch(LotCode lot, String recipe, Mass expected, PackStates.Packed packed) {
            Optional<Fact.Yielded> weighed = records.yielded(lot);
            Gave gave = new Gave(
                    weighed.map(Fact.Yielded::product).orElse(expected), weighed.isPresent(), records.wasted(lot));
            return new Batch(
                    lot,
                    recipe,
                    packed.at(),
                    gave,
                    packed.states(),
                    holds.why(lot).orElse(""));
        }

        private Map<LotCode, Map<String, Integer>> filled() {
            Map<LotCode, Map<String, Integer>> filled = new HashMap<>();
            sql.list(
                    row -> filled.computeIfAbsent(row.lot("lot"), any -> new TreeMap<>())
                            .put(row.text("product"), row.whole("packs")),
                    """
                    SELECT lot, product, packs FROM plan_pack
                    JOIN plan_in_force USING (production_date, revision)""");
            return filled;
        }

        /** As handed over where somebody wrote it down, else as allocated. */
        private List<Handed> handed() {
            List<Handed> handed = new ArrayList<>();
            Set<String> written = new HashSet<>();
            Map<String, Handed> planned = new HashMap<>();
            List<Handed> allocated = sql.list(this::allocated, """
                    SELECT order_number, line, lot, route, customer, product, packs, delivery_date
                    FROM plan_allocation JOIN plan_in_force USING (production_date, revision)
                    ORDER BY delivery_date, route, customer, order_number, line, lot""");
            allocated.forEach(one -> planned.put(one.order() + " " + one.line(), one));
            records.delivered().forEach(recorded -> {
                Fact.Delivered fact = (Fact.Delivered) recorded.fact();
                written.add(fact.order() + " " + fact.line());
                handed.add(delivered(
                        fact,
                        recorded.happenedAt(),
                        Optional.ofNullable(planned.get(fact.order() + " " + fact.line()))));
            });
            allocated.stream()
                    .filter(one -> !written.contains(one.order() + " " + one.line()))
                    .forEach(handed::add);
            return handed;
        }

        private Handed delivered(Fact.Delivered fact, Instant at, Optional<Handed> plan) {
            String route = plan.map(Handed::route)
                    .or(() -> shop.findCustomer(fact.customer()).map(customer -> customer.route()))
                    .orElse("");
            LocalDate day = plan.map(Handed::day)
                    .orElse(LocalDate.ofInstant(at, shop.house().zone()));
            return new Handed(
                    fact.order(),
                    fact.line(),
                    fact.customer(),
                    route,
                    day,
                    fact.lot(),
                    fact.product(),
                    fact.packs(),
                    true);
        }

        private Handed allocated(Row row) throws SQLException {
            LotCode lot = row.lot("lot");
            LocalDate day = row.day("delivery_date");
            Instant departs = PackStates.departs(shop, row.text("route"), day);
            boolean isGone = !departs.isAfter(now)
                    && !holds.wasHeld(lot, departs)
                    && records.lostAt(lot).filter(at -> at.isBefore(departs)).isEmpty();
            return new Handed(
                    row.text("order_number"),
                    row.whole("line"),
                    row.text("customer"),
                    row.text("route"),
                    day,
                    lot,
                    row.text("product"),
                    row.whole("packs"),
                    isGone);
        }
    }

    private static Feed feed(Row row) throws SQLException {
        return new Feed(row.lot("lot"), row.lot("into_lot"), row.mass("mass_mg"));
    }
}
