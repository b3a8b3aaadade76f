package dawnkettle.store;

import dawnkettle.measure.Money;
import dawnkettle.shop.Material;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Fact.CameLate;
import dawnkettle.stock.Fact.Cooked;
import dawnkettle.stock.Fact.Cooled;
import dawnkettle.stock.Fact.CountedMaterial;
import dawnkettle.stock.Fact.CountedPacks;
import dawnkettle.stock.Fact.Dating;
import dawnkettle.stock.Fact.Delivered;
import dawnkettle.stock.Fact.LostBatch;
import dawnkettle.stock.Fact.LostPacks;
import dawnkettle.stock.Fact.Packed;
import dawnkettle.stock.Fact.Priced;
import dawnkettle.stock.Fact.Received;
import dawnkettle.stock.Fact.Returned;
import dawnkettle.stock.Fact.Soaked;
import dawnkettle.stock.Fact.Sold;
import dawnkettle.stock.Fact.Yielded;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import java.sql.SQLException;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Which columns of the records' table each fact fills. */
final class FactColumns {
    private FactColumns() {}

    /** The kind's word in the table, as "counted-packs". */
    static String word(Fact fact) {
        return fact.getClass()
                .getSimpleName()
                .replaceAll("(?<=.)(?=[A-Z])", "-")
                .toLowerCase(Locale.ROOT);
    }

    static Map<String, Object> of(Fact fact) {
        if (fact instanceof Received f) return received(f);
        if (fact instanceof CountedMaterial f)
            return with(material(f.material(), f.lot(), f.left()), "note", said(f.why()));
        if (fact instanceof CountedPacks f) return countedPacks(f);
        if (fact instanceof Yielded f) return yielded(f);
        if (fact instanceof Packed f) return packs(f.lot(), f.product(), f.packs());
        if (fact instanceof CameLate f)
            return map("product", f.product(), "day", f.productionDate(), "packs", f.packs());
        if (fact instanceof Cooked f) return map("lot", f.lot(), "tenths", f.reached(), "minutes", f.minutes());
        if (fact instanceof Cooled f) return map("lot", f.lot(), "tenths", f.reached());
        if (fact instanceof Soaked f) return soaked(f);
        if (fact instanceof LostBatch f) return map("lot", f.lot(), "note", f.why());
        if (fact instanceof LostPacks f) return with(packs(f.lot(), f.product(), f.packs()), "note", f.why());
        if (fact instanceof Sold f) return packs(f.lot(), f.product(), f.packs());
        if (fact instanceof Delivered f) return delivered(f);
        if (fact instanceof Returned f) return returned(f);
        if (fact instanceof Priced f) return priced(f);
        return KeepingColumns.of(fact);
    }

    /** Nothing where nobody said anything. */
    private static Optional<String> said(String why) {
        return Optional.of(why).filter(text -> !text.isEmpty());
    }

    private static Map<String, Object> received(Received f) {
        Map<String, Object> columns = material(f.material(), f.lot(), f.quantity());
        with(columns, "minor", f.paid().minor(), "currency", code(f.paid()));
        return with(columns, "best_before", f.bestBefore());
    }

    static Map<String, Object> material(String material, String lot, Quantity quantity) {
        return map("material", material, "lot", lot, "amount", quantity.smallest(), "unit", quantity.unit());
    }

    private static Map<String, Object> countedPacks(CountedPacks f) {
        Map<String, Object> columns = packs(f.lot(), f.product(), f.packs());
        with(columns, "day", f.dating().map(Dating::packDate));
        with(columns, "best_before", f.dating().map(Dating::bestBefore));
        return with(columns, "note", said(f.why()));
    }

    static Map<String, Object> packs(LotCode lot, String product, int packs) {
        return map("lot", lot, "product", product, "packs", packs);
    }

    private static Map<String, Object> yielded(Yielded f) {
        return map("lot", f.lot(), "recipe", f.recipe(), "beans_mg", f.input(), "mass_mg", f.product());
    }

    private static Map<String, Object> soaked(Soaked f) {
        return map("day", f.productionDate(), "place", f.tub(), "lot", f.beanLot(), "beans_mg", f.beans());
    }

    private static Map<String, Object> delivered(Delivered f) {
        Map<String, Object> columns = packs(f.lot(), f.product(), f.packs());
        return with(columns, "order_number", f.order(), "line", f.line(), "customer", f.customer());
    }

    private static Map<String, Object> returned(Returned f) {
        Map<String, Object> columns = map("customer", f.customer(), "product", f.product());
        return with(columns, "place", f.what(), "packs", f.count(), "note", f.why(), "lot", f.lot());
    }

    private static Map<String, Object> priced(Priced f) {
        Map<String, Object> columns = map("place", f.priceList(), "product", f.product(), "day", f.from());
        return with(columns, "minor", f.price().minor(), "currency", code(f.price()));
    }

    static Fact fact(Row row) throws SQLException {
        return switch (row.text("kind")) {
            case "received" ->
                new Received(
                        row.text("material"), row.text("lot"), quantity(row), money(row), row.findDay("best_before"));
            case "counted-material" ->
                new CountedMaterial(row.text("material"), row.text("lot"), quantity(row), said(row));
            case "counted-packs" ->
                new CountedPacks(row.lot("lot"), row.text("product"), row.whole("packs"), dating(row), said(row));
            case "yielded" ->
                new Yielded(row.lot("lot"), row.text("recipe"), row.mass("beans_mg"), row.mass("mass_mg"));
            case "packed" -> new Packed(row.lot("lot"), row.text("product"), row.whole("packs"));
            case "came-late" -> new CameLate(row.text("product"), row.day("day"), row.whole("packs"));
            case "cooked" -> new Cooked(row.lot("lot"), row.celsius("tenths"), row.whole("minutes"));
            case "cooled" -> new Cooled(row.lot("lot"), row.celsius("tenths"));
            case "soaked" -> new Soaked(row.day("day"), row.text("place"), row.text("lot"), row.mass("beans_mg"));
            case "lost-batch" -> new LostBatch(row.lot("lot"), row.text("note"));
            case "lost-packs" ->
                new LostPacks(row.lot("lot"), row.text("product"), row.whole("packs"), row.text("note"));
            case "sold" -> new Sold(row.lot("lot"), row.text("product"), row.whole("packs"));
            case "delivered" -> delivered(row);
            case "returned" ->
                new Returned(
                        row.text("customer"),
                        row.text("product"),
                        row.word("place", Returned.What.class),
                        row.whole("packs"),
                        row.text("note"),
                        row.findText("lot").map(LotCode::new));
            case "priced" -> new Priced(row.text("place"), row.text("product"), money(row), row.day("day"));
            default -> KeepingColumns.fact(row);
        };
    }

    private static String said(Row row) throws SQLException {
        return row.findText("note").orElse("");
    }

    private static Delivered delivered(Row row) throws SQLException {
        return new Delivered(
                row.text("order_number"),
                row.whole("line"),
                row.text("customer"),
                row.lot("lot"),
                row.text("product"),
                row.whole("packs"));
    }

    private static Optional<Dating> dating(Row row) throws SQLException {
        return row.findText("day").isEmpty()
                ? Optional.empty()
                : Optional.of(new Dating(row.day("day"), row.day("best_before")));
    }

    static Quantity quantity(Row row) throws SQLException {
        return new Quantity(row.number("amount"), row.word("unit", Material.Unit.class));
    }

    private static Money money(Row row) throws SQLException {
        return Money.minor(row.number("minor"), Currency.getInstance(row.text("currency")));
    }

    private static String code(Money money) {
        return money.currency().getCurrencyCode();
    }

    static Map<String, Object> map(Object... columnsAndValues) {
        return with(new LinkedHashMap<>(), columnsAndValues);
    }

    static Map<String, Object> with(Map<String, Object> columns, Object... columnsAndValues) {
        for (int i = 0; i < columnsAndValues.length; i += 2)
            columns.put((String) columnsAndValues[i], columnsAndValues[i + 1]);
        return columns;
    }
}
