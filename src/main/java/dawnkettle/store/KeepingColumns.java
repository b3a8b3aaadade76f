package dawnkettle.store;

import static dawnkettle.store.FactColumns.map;
import static dawnkettle.store.FactColumns.material;
import static dawnkettle.store.FactColumns.packs;
import static dawnkettle.store.FactColumns.quantity;
import static dawnkettle.store.FactColumns.with;

import dawnkettle.stock.Fact;
import dawnkettle.stock.Fact.Away;
import dawnkettle.stock.Fact.Cancelled;
import dawnkettle.stock.Fact.Containers;
import dawnkettle.stock.Fact.Destroyed;
import dawnkettle.stock.Fact.Down;
import dawnkettle.stock.Fact.Held;
import dawnkettle.stock.Fact.HeldBought;
import dawnkettle.stock.Fact.Loaded;
import dawnkettle.stock.Fact.LostMaterial;
import dawnkettle.stock.Fact.Released;
import dawnkettle.stock.Fact.ReleasedBought;
import dawnkettle.stock.Fact.SoakSeen;
import dawnkettle.stock.Fact.Up;
import dawnkettle.stock.Fact.UsedMaterial;
import dawnkettle.stock.Fact.Wasted;
import dawnkettle.stock.Fact.Worked;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/** Which columns the facts about keeping fill: what is held, released, wasted, destroyed, loaded, cancelled. */
final class KeepingColumns {
    private static final String READY = "ready";
    private static final String NOT_READY = "not ready";

    private KeepingColumns() {}

    static Map<String, Object> of(Fact fact) {
        if (fact instanceof UsedMaterial f) return with(material(f.material(), f.lot(), f.quantity()), "note", f.why());
        if (fact instanceof LostMaterial f) return with(material(f.material(), f.lot(), f.quantity()), "note", f.why());
        if (fact instanceof Wasted f) return map("lot", f.lot(), "mass_mg", f.mass(), "note", f.why());
        if (fact instanceof SoakSeen f)
            return map("day", f.productionDate(), "place", f.tub(), "note", f.ready() ? READY : NOT_READY);
        if (fact instanceof Containers f) return containers(f);
        if (fact instanceof Loaded f) return map("place", f.route(), "day", f.deliveryDate());
        if (fact instanceof Destroyed f) return with(packs(f.lot(), f.product(), f.packs()), "note", f.why());
        if (fact instanceof Held f) return map("lot", f.lot(), "note", f.why());
        if (fact instanceof Released f) return map("lot", f.lot(), "place", f.by(), "note", f.why());
        if (fact instanceof HeldBought f) return map("material", f.material(), "lot", f.lot(), "note", f.why());
        if (fact instanceof ReleasedBought f)
            return map("material", f.material(), "lot", f.lot(), "place", f.by(), "note", f.why());
        if (fact instanceof Worked f)
            return map("day", f.productionDate(), "minutes", f.hours().toMinutes());
        if (fact instanceof Away f)
            return with(
                    stretch(f.productionDate(), f.from(), Optional.of(f.until())),
                    "half_hands",
                    f.halfHands(),
                    "note",
                    f.why());
        if (fact instanceof Down f)
            return with(
                    stretch(f.productionDate(), f.from(), Optional.of(f.until())),
                    "place",
                    f.station(),
                    "note",
                    f.why());
        if (fact instanceof Up f)
            return with(stretch(f.productionDate(), f.from(), Optional.empty()), "place", f.station());
        Cancelled f = (Cancelled) fact;
        return map("cancels", f.number(), "note", f.why());
    }

    private static Map<String, Object> stretch(LocalDate day, Instant from, Optional<Instant> until) {
        return map("day", day, "from_at", from, "until_at", until);
    }

    private static Map<String, Object> containers(Containers f) {
        Map<String, Object> columns = map("customer", f.customer(), "product", f.product());
        return with(columns, "place", f.way(), "packs", f.count(), "note", f.why());
    }

    static Fact fact(Row row) throws SQLException {
        return switch (row.text("kind")) {
            case "used-material" ->
                new UsedMaterial(row.text("material"), row.text("lot"), quantity(row), row.text("note"));
            case "lost-material" ->
                new LostMaterial(row.text("material"), row.text("lot"), quantity(row), row.text("note"));
            case "wasted" -> new Wasted(row.lot("lot"), row.mass("mass_mg"), row.text("note"));
            case "soak-seen" -> new SoakSeen(row.day("day"), row.text("place"), READY.equals(row.text("note")));
            case "containers" ->
                new Containers(
                        row.text("customer"),
                        row.text("product"),
                        row.word("place", Containers.Way.class),
                        row.whole("packs"),
                        row.text("note"));
            case "loaded" -> new Loaded(row.text("place"), row.day("day"));
            case "destroyed" ->
                new Destroyed(row.lot("lot"), row.text("product"), row.whole("packs"), row.text("note"));
            case "held" -> new Held(row.lot("lot"), row.text("note"));
            case "released" -> new Released(row.lot("lot"), row.text("place"), row.text("note"));
            case "held-bought" -> new HeldBought(row.text("material"), row.text("lot"), row.text("note"));
            case "released-bought" ->
                new ReleasedBought(row.text("material"), row.text("lot"), row.text("place"), row.text("note"));
            case "worked" -> new Worked(row.day("day"), Duration.ofMinutes(row.number("minutes")));
            case "away" ->
                new Away(
                        row.day("day"),
                        row.whole("half_hands"),
                        row.instant("from_at"),
                        row.instant("until_at"),
                        row.text("note"));
            case "down" ->
                new Down(
                        row.day("day"),
                        row.text("place"),
                        row.instant("from_at"),
                        row.instant("until_at"),
                        row.text("note"));
            case "up" -> new Up(row.day("day"), row.text("place"), row.instant("from_at"));
            case "cancelled" -> new Cancelled(row.number("cancels"), row.text("note"));
            default -> throw new IllegalStateException("the ledger holds a record of unknown kind");
        };
    }
}
