package dawnkettle.export;

import static dawnkettle.export.PlanFile.date;
import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.sum;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** No lot gives more than it has, and none is delivered too old. */
final class LotRules {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT);

    private final PlanFile plan;
    private final Faults faults;

    LotRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        PlanFile.grouped(plan.rows("batches"), batch -> text(batch, "lot"))
                .forEach((lot, rows) -> faults.unless(rows.size() == 1, "lot-once", lot));
        PlanFile.grouped(plan.rows("batches"), batch -> text(batch, "id"))
                .forEach((id, rows) -> faults.unless(rows.size() == 1, "batch-once", id));
        plan.rows("batches").forEach(this::code);
        for (JsonNode batch : plan.rows("batches")) for (JsonNode packs : items(batch, "packs")) filled(batch, packs);
        plan.rows("stock").forEach(this::stock);
        plan.rows("allocation").forEach(this::allocation);
    }

    private void code(JsonNode batch) {
        String lot = text(batch, "lot");
        String day = DAY.format(date(plan.root, "productionDate"));
        faults.unless(lot.matches("[0-9]{6}-[A-Z]{2}[0-9]{2,3}") && lot.startsWith(day + "-"), "lot-code", lot);
        List<JsonNode> kin = plan.rows("batches").stream()
                .filter(other -> text(other, "lot").regionMatches(0, lot, 0, 9))
                .toList();
        faults.unless(kin.stream().allMatch(PlanFile.same(batch, "recipe")), "lot-mark-of-one-recipe", lot);
    }

    private void filled(JsonNode batch, JsonNode packs) {
        String where = text(batch, "lot") + " " + text(packs, "product");
        JsonNode product = plan.get("products", "product", text(packs, "product"));
        faults.unless(text(product, "recipe").equals(text(batch, "recipe")), "packs-of-the-recipe", where);
        faults.unless(
                items(batch, "packs").stream()
                                .filter(PlanFile.same(packs, "product"))
                                .count()
                        == 1,
                "packs-once",
                where);
        long given = given(text(batch, "lot"), text(packs, "product"), "batch");
        faults.unless(given <= whole(packs, "packs"), "lot-packs", where + ": " + given + " given");
        faults.unless(
                whole(packs, "packs")
                        == whole(packs, "cases") * whole(product, "packsInCase") + whole(packs, "loosePacks"),
                "packs-are-cases-and-loose",
                where);
    }

    private void stock(JsonNode stock) {
        String where = text(stock, "lot") + " " + text(stock, "product");
        long given = given(text(stock, "lot"), text(stock, "product"), "stock");
        long there = sum(plan.rows("stock").stream().filter(PlanFile.same(stock, "lot", "product")), "packs");
        faults.unless(given <= there, "stock-packs", where + ": " + given + " given");
        JsonNode product = plan.get("products", "product", text(stock, "product"));
        faults.unless(
                !date(stock, "bestBefore").isAfter(date(stock, "packDate").plusDays(whole(product, "shelfLifeDays"))),
                "stock-best-before",
                where);
    }

    private long given(String lot, String product, String source) {
        return sum(
                plan.rows("allocation").stream()
                        .filter(one -> text(one, "lot").equals(lot)
                                && text(one, "product").equals(product)
                                && text(one, "source").equals(source)),
                "packs");
    }

    private void allocation(JsonNode one) {
        String where = text(one, "order") + "/" + text(one, "line") + " " + text(one, "lot");
        Optional<LocalDate> bestBefore = bestBefore(one);
        faults.unless(bestBefore.isPresent(), "allocation-has-lot", where);
        JsonNode product = plan.get("products", "product", text(one, "product"));
        faults.unless(whole(one, "leastDaysLeft") == whole(product, "leastDaysLeft"), "least-days-of-product", where);
        bestBefore.ifPresent(last -> {
            long left = ChronoUnit.DAYS.between(date(one, "deliveryDate"), last);
            faults.unless(left >= whole(one, "leastDaysLeft"), "days-left", where + ": " + left);
            faults.unless(left == whole(one, "daysLeft"), "days-left-as-said", where + ": " + left);
        });
    }

    private Optional<LocalDate> bestBefore(JsonNode one) {
        boolean stock = text(one, "source").equals("stock");
        boolean there = stock
                || plan.find("batches", "lot", text(one, "lot"))
                        .filter(batch -> items(batch, "packs").stream().anyMatch(PlanFile.same(one, "product")))
                        .isPresent();
        return plan.rows(stock ? "stock" : "labels").stream()
                .filter(row -> there)
                .filter(PlanFile.same(one, "lot", "product"))
                .map(row -> date(row, "bestBefore"))
                .findFirst();
    }
}
