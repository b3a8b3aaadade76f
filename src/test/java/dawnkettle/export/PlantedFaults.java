package dawnkettle.export;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** For each rule a fault that breaks it, planted into the plan of the demonstration shop's Friday. */
final class PlantedFaults {
    private final Map<String, Consumer<Planted>> faults = new LinkedHashMap<>();

    static Map<String, Consumer<Planted>> all() {
        PlantedFaults all = new PlantedFaults();
        all.heading();
        all.book();
        all.demand();
        all.lots();
        all.labels();
        all.masses();
        all.soaks();
        all.steps();
        all.room();
        all.vans();
        return all.faults;
    }

    private void breaks(String rule, Consumer<Planted> fault) {
        if (faults.put(rule, fault) != null) throw new IllegalArgumentException("planted twice: " + rule);
    }

    private void heading() {
        breaks("schema-name", p -> p.put("/schema", "dawnkettle-plan/0"));
        breaks("mode-known", p -> p.put("/mode", "best"));
        breaks("revision-follows", p -> p.put("/revisionOf", 1));
        breaks("offset-of-zone", p -> p.put("/routes/0/departs", "2026-12-04T15:30:00+00:00"));
    }

    private void book() {
        breaks("order-line-once", p -> p.twice("/orders", 0));
        breaks("planned-within-ordered", p -> p.more("/orders/0/plannedPacks", 1));
        breaks("order-state", p -> p.put("/orders/0/state", "part"));
        breaks("reason-where-declined", p -> p.put("/orders/0/reason", "no room"));
        breaks("allocation-is-planned", p -> p.more("/allocation/0/packs", -1));
        breaks("order-in-demand", p -> p.put("/orders/0/deliveryDate", "2027-01-01"));
        breaks("allocation-fits-order", p -> p.put("/allocation/0/customer", "C999"));
        breaks("allocation-of-something", p -> p.put("/allocation/0/packs", 0));
        breaks("shortage-is-declined", p -> p.append("/shortages", shortage("FIRM-400", "no room")));
        breaks("shortage-has-reason", p -> p.append("/shortages", shortage("FIRM-400", "")));
    }

    private static Map<String, Object> shortage(String product, String reason) {
        return Map.of("product", product, "packs", 1, "reason", reason);
    }

    private void demand() {
        breaks("demand-equation", p -> p.more("/demand/0/toMakePacks", 1));
        breaks("demand-firm", p -> p.more("/demand/0/firmPacks", 1).more("/demand/0/standingPacks", -1));
        breaks("demand-standing", p -> p.more("/demand/0/allowancePacks", 1).more("/demand/0/standingPacks", -1));
        breaks("demand-declined", p -> p.more("/demand/0/declinedPacks", 90).more("/demand/0/toMakePacks", -90));
        breaks("demand-from-stock", p -> p.more("/demand/0/fromStockPacks", 90).more("/demand/0/toMakePacks", -90));
        breaks("demand-mass", p -> p.more("/demand/0/massGrams", 1));
        breaks("demand-once", p -> p.twice("/demand", 0));
        breaks("made-covers-demand", p -> p.more("/batches/0/packs/0/packs", -500));
    }

    private void lots() {
        breaks("lot-once", p -> p.put("/batches/1/lot", p.at("/batches/0/lot")));
        breaks("batch-once", p -> p.put("/batches/1/id", p.at("/batches/0/id")));
        breaks("lot-code", p -> p.put("/batches/0/lot", "261205-XF01"));
        breaks("lot-mark-of-one-recipe", p -> p.put(of(p, "milk") + "/lot", "261204-XF99"));
        breaks("packs-of-the-recipe", p -> p.put(of(p, "milk") + "/packs/0/product", "FIRM-400"));
        breaks("packs-once", p -> p.twice(of(p, "milk") + "/packs", 0));
        breaks("lot-packs", p -> p.more(made(p) + "/packs", 5_000));
        breaks("packs-are-cases-and-loose", p -> p.more("/batches/0/packs/0/loosePacks", 1));
        breaks(
                "stock-packs",
                p -> p.put("/stock/0/packs", 0).put("/stock/1/packs", 0).put("/stock/2/packs", 0));
        breaks("stock-best-before", p -> p.days("/stock/0/bestBefore", 1));
        breaks("allocation-has-lot", p -> p.put(made(p) + "/lot", "261204-FI99"));
        breaks("least-days-of-product", p -> p.put("/allocation/0/leastDaysLeft", 0));
        breaks("days-left", p -> p.days("/allocation/0/deliveryDate", 20));
        breaks("days-left-as-said", p -> p.more("/allocation/0/daysLeft", 1));
    }

    /** The first batch of a recipe. */
    private static String of(Planted plan, String recipe) {
        return plan.where("/batches", "recipe", recipe);
    }

    /** The first packs that are promised from a batch. */
    private static String made(Planted plan) {
        return plan.where("/allocation", "source", "batch");
    }

    private void labels() {
        breaks("labels-once", p -> p.drop("/labels", 0));
        breaks("labels-are-cases", p -> p.more("/labels/0/cases", 1));
        breaks("label-cases-of-batch", p -> p.put(parted(p) + "/partCases", List.of(1)));
        breaks("packs-in-case", p -> p.more("/labels/0/packsInCase", 1));
        breaks("part-case-is-part", p -> p.put(parted(p) + "/partCases/0", 48));
        breaks("label-pack-date", p -> p.days("/labels/0/packDate", -1));
        breaks("best-before", p -> p.days("/labels/0/bestBefore", 1));
        breaks("gtin-check-digit", p -> p.put("/labels/0/gtin", "19520001000018"));
        breaks(
                "element-string",
                p -> p.put(
                        "/labels/0/elementString",
                        "(15)261208(10)" + p.at("/labels/0/lot").asText()));
    }

    private static String parted(Planted plan) {
        return plan.first("/labels", label -> label.path("partCases").size() > 1);
    }

    private void masses() {
        breaks("kettle-size", p -> p.put("/batches/0/beansGrams", 35_000));
        breaks("kettle-step", p -> p.more("/batches/0/beansGrams", -1));
        breaks("beans-or-parents", p -> p.put(of(p, "pouch") + "/beansGrams", 5_000));
        breaks("parent-of-the-recipe", p -> p.put(p.where("/recipes", "recipe", "pouch") + "/madeFrom", "firm"));
        breaks("beans-from-tubs", p -> p.more("/batches/0/soaks/0/grams", 1));
        breaks("yield-of-recipe", p -> p.more("/batches/0/expectedGrams", 100));
        breaks("yield-as-said", p -> p.more("/recipes/0/gramsPerKgBeans", 1));
        breaks("batch-mass", p -> p.more("/batches/0/trimGrams", 1));
        breaks("trim-share", p -> p.put("/batches/0/trimGrams", 0));
        breaks("feeds-a-batch", p -> p.put(of(p, "thinfirm") + "/feeds/0/batch", "B99"));
        breaks("material-lots", p -> p.put("/soak/0/beanLots", List.of("ANOTHER")));
        breaks("tub-balance", p -> p.more("/soak/0/leftOverGrams", 1));
        breaks("tub-most", p -> p.put("/tubs/0/mostBeansGrams", 10_000));
    }

    private void soaks() {
        breaks("tub-once", p -> p.twice("/soak", 0));
        breaks("tub-is-filled", p -> p.put("/batches/0/soaks/0/tub", "T14"));
        breaks("tub-known", p -> p.put("/soak/0/tub", "T99"));
        breaks("fill-when-somebody-is-there", p -> p.put("/soak/0/fillAt", "2026-12-03T23:00:00-05:00"));
        breaks("fill-not-in-the-past", p -> p.put("/soak/0/fillAt", "2026-12-03T10:00:00-05:00"));
        breaks("soak-runs-forward", p -> p.put("/soak/0/readyAt", "2026-12-03T15:00:00-05:00"));
        breaks("bean-lots-of-tub", p -> p.put("/soak/0/beanLots", List.of("A", "B", "C")));
        breaks(
                "bean-lots-add-up",
                p -> p.more(p.first("/soak", tub -> tub.has("beanLotGrams")) + "/beanLotGrams/0", 1));
        breaks("batches-of-tub", p -> p.drop("/soak/0/batches", 0));
        breaks("soak-group", p -> p.put("/soak/0/soakGroup", "black"));
        breaks("grind-when-ready", p -> p.later("/soak/0/readyAt", 600));
        breaks("grind-not-too-late", p -> p.put("/soak/0/latestGrindAt", "2026-12-04T00:00:00-05:00"));
        breaks("tub-in-grinding-order", p -> p.put("/soak/0/batches", reversed(p.at("/soak/0/batches"))));
        breaks("equivalent-soak", p -> p.put("/soak/0/equivalentMinutes", 10));
    }

    private static List<String> reversed(JsonNode batches) {
        List<String> ids = new ArrayList<>();
        batches.forEach(id -> ids.add(0, id.asText()));
        return ids;
    }

    private void steps() {
        breaks("operation-of-a-batch", p -> p.put("/operations/0/batch", "B99"));
        breaks("every-step-once", p -> p.drop("/operations", 3));
        breaks("recipe-known", p -> p.put("/batches/0/recipe", "stew"));
        breaks("step-stage", p -> p.put("/operations/0/stage", "cook"));
        breaks("step-minutes", p -> p.later("/operations/0/end", 5));
        breaks("whole-minutes", p -> p.put("/operations/0/start", "2026-12-04T02:30:20-05:00"));
        breaks("step-hands", p -> p.put("/operations/0/hands", 0.5));
        breaks("step-order", p -> p.later(step(p, 2) + "/start", -30));
        breaks("longest-wait", p -> p.later(step(p, 2) + "/start", 60));
        breaks("pack-date", p -> p.days("/batches/0/packDate", 1));
        breaks("start-not-in-the-past", p -> p.put("/computedAt", "2026-12-04T09:00:00-05:00"));
    }

    private static String step(Planted plan, int seq) {
        return plan.first("/operations", operation -> operation.path("seq").asInt() == seq);
    }

    private void room() {
        breaks("station-of-the-stage", p -> p.put("/operations/0/station", "FRYER"));
        breaks("inside-one-window", p -> p.put("/stations/0/windows/0/until", "2026-12-04T02:35:00-05:00"));
        breaks("place-within-places", p -> p.put("/operations/0/place", 2));
        breaks("occupies-its-mass", p -> p.put(p.where("/operations", "stage", "bath") + "/occupiesGrams", 1));
        breaks("places-or-capacity", p -> ((ObjectNode) p.at("/stations/0")).put("capacityGrams", 5));
        breaks("capacity-of-station", p -> p.put(p.where("/stations", "stage", "bath") + "/capacityGrams", 80_000));
        breaks("one-at-a-place", p -> p.put("/operations/1/station", p.at("/operations/0/station")));
        breaks("changeover-time", p -> p.at("/changeovers").forEach(row -> ((ObjectNode) row).put("minutes", 300)));
        breaks("nothing-where-it-is-down", p -> down(p, p.at("/operations/0/start"), p.at("/operations/0/end")));
        breaks("window-without-down", p -> down(p, p.at("/stations/0/windows/0/from"), p.at("/operations/0/start")));
        breaks("hands-there", p -> p.put("/hands/2/people", 1.5));
    }

    private static void down(Planted plan, JsonNode from, JsonNode until) {
        ObjectNode row = plan.root.putArray("down").addObject();
        row.set("station", plan.at("/operations/0/station"));
        row.set("from", from);
        row.set("until", until.equals(from) ? plan.at("/operations/0/end") : until);
    }

    private void vans() {
        breaks("van-once", p -> p.twice("/routes", 0));
        breaks("allocation-has-van", p -> p.put("/routes/0/route", "OTHER"));
        breaks("packed-by", p -> p.later("/routes/0/packedBy", -1));
        breaks("late-minutes", p -> p.put("/routes/0/lateMinutes", 7));
        breaks("quality-late", p -> p.put("/quality/lateMinutes", 7));
        breaks("decodes-in-budget", p -> p.more("/quality/decodes", 1));
        breaks("quality-finish", p -> p.later("/quality/finish", 1));
        breaks("bound-below-finish", p -> p.later("/quality/lowerBoundFinish", 300));
        breaks("quality-gap", p -> p.put("/quality/gapPercent", 55.5));
    }
}
