package dawnkettle.export;

import static dawnkettle.export.PlanFile.sum;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.totals;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What was ordered is planned or declined, line by line and product by product. */
final class BookRules {
    private final PlanFile plan;
    private final Faults faults;

    BookRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        Map<String, List<JsonNode>> lines = PlanFile.grouped(plan.rows("orders"), BookRules::lineOf);
        lines.forEach((line, rows) -> faults.unless(rows.size() == 1, "order-line-once", line));
        plan.rows("orders").forEach(this::order);
        plan.rows("allocation").forEach(one -> allocation(one, lines.getOrDefault(lineOf(one), List.of())));
        plan.rows("demand").forEach(this::demand);
        demandOnce();
        shortages();
    }

    private static String lineOf(JsonNode row) {
        return text(row, "order") + "/" + text(row, "line");
    }

    private void order(JsonNode order) {
        String line = lineOf(order);
        long packs = whole(order, "packs");
        long planned = whole(order, "plannedPacks");
        faults.unless(planned >= 0 && planned <= packs, "planned-within-ordered", line);
        String state = planned == packs ? "planned" : planned == 0 ? "declined" : "part";
        faults.unless(text(order, "state").equals(state), "order-state", line + " is " + state);
        faults.unless(text(order, "reason").isEmpty() == (planned == packs), "reason-where-declined", line);
        long allocated =
                sum(plan.rows("allocation").stream().filter(one -> lineOf(one).equals(line)), "packs");
        faults.unless(allocated == planned, "allocation-is-planned", line + ": " + allocated + " of " + planned);
        boolean wanted = plan.rows("demand").stream().anyMatch(PlanFile.same(order, "product", "deliveryDate"));
        faults.unless(wanted, "order-in-demand", line);
    }

    private void allocation(JsonNode one, List<JsonNode> orders) {
        String line = lineOf(one);
        faults.unless(whole(one, "packs") > 0, "allocation-of-something", line);
        faults.unless(
                orders.stream().anyMatch(PlanFile.same(one, "route", "customer", "product", "deliveryDate")),
                "allocation-fits-order",
                line);
    }

    private void demand(JsonNode demand) {
        String where = text(demand, "product") + " " + text(demand, "deliveryDate");
        long wanted = whole(demand, "firmPacks") + whole(demand, "standingPacks") + whole(demand, "allowancePacks");
        long served = whole(demand, "fromStockPacks") + whole(demand, "declinedPacks") + whole(demand, "toMakePacks");
        faults.unless(wanted == served, "demand-equation", where + ": " + wanted + " against " + served);
        faults.unless(ordered(demand, false) == whole(demand, "firmPacks"), "demand-firm", where);
        faults.unless(ordered(demand, true) == whole(demand, "standingPacks"), "demand-standing", where);
        long declined = linesOf(demand)
                .mapToLong(order -> whole(order, "packs") - whole(order, "plannedPacks"))
                .sum();
        long more = whole(demand, "declinedPacks") - declined;
        faults.unless(more >= 0 && more <= whole(demand, "allowancePacks"), "demand-declined", where);
        long stock = sum(
                plan.rows("allocation").stream()
                        .filter(PlanFile.same(demand, "product", "deliveryDate"))
                        .filter(one -> text(one, "source").equals("stock")),
                "packs");
        long kept = whole(demand, "fromStockPacks") - stock;
        faults.unless(kept >= 0 && kept <= whole(demand, "allowancePacks"), "demand-from-stock", where);
        JsonNode product = plan.get("products", "product", text(demand, "product"));
        faults.unless(
                Math.abs(whole(demand, "massGrams") * 1000
                                - whole(demand, "toMakePacks") * whole(product, "netMilligrams"))
                        <= 500,
                "demand-mass",
                where);
    }

    private Stream<JsonNode> linesOf(JsonNode demand) {
        return plan.rows("orders").stream().filter(PlanFile.same(demand, "product", "deliveryDate"));
    }

    private long ordered(JsonNode demand, boolean standing) {
        return sum(linesOf(demand).filter(order -> text(order, "source").equals("standing") == standing), "packs");
    }

    private void demandOnce() {
        PlanFile.grouped(plan.rows("demand"), row -> text(row, "product") + " " + text(row, "deliveryDate"))
                .forEach((what, rows) -> faults.unless(rows.size() == 1, "demand-once", what));
        Map<String, Long> toMake = totals(plan.rows("demand"), "product", row -> whole(row, "toMakePacks"));
        Map<String, Long> made = totals(
                plan.rows("batches").stream()
                        .flatMap(batch -> PlanFile.items(batch, "packs").stream())
                        .toList(),
                "product",
                row -> whole(row, "packs"));
        toMake.forEach((product, packs) ->
                faults.unless(made.getOrDefault(product, 0L) >= packs, "made-covers-demand", product));
    }

    private void shortages() {
        Map<String, Long> declined =
                totals(plan.rows("orders"), "product", order -> whole(order, "packs") - whole(order, "plannedPacks"));
        Map<String, Long> missing = totals(plan.rows("shortages"), "product", row -> whole(row, "packs"));
        faults.unless(declined.equals(missing), "shortage-is-declined", declined + " against " + missing);
        plan.rows("shortages")
                .forEach(row ->
                        faults.unless(!text(row, "reason").isBlank(), "shortage-has-reason", text(row, "product")));
    }
}
