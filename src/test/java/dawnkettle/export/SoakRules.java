package dawnkettle.export;

import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.minute;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.texts;
import static dawnkettle.export.PlanFile.time;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;

/** A tub is filled when somebody is there, and ground when it is ready and not too late. */
final class SoakRules {
    /** Equivalent minutes are minutes at this temperature. */
    private static final long REFERENCE_TENTHS = 200;

    /** People are walking to what begins within this. */
    private static final long FREEZE_MINUTES = 60;

    private final PlanFile plan;
    private final Faults faults;

    SoakRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        PlanFile.grouped(plan.rows("soak"), soak -> text(soak, "tub"))
                .forEach((tub, uses) -> faults.unless(uses.size() == 1, "tub-once", tub));
        plan.rows("soak").forEach(this::soak);
        for (JsonNode batch : plan.rows("batches"))
            for (JsonNode part : items(batch, "soaks"))
                faults.unless(
                        plan.find("soak", "tub", text(part, "tub")).isPresent(), "tub-is-filled", text(batch, "id"));
    }

    private void soak(JsonNode soak) {
        String tub = text(soak, "tub");
        faults.unless(plan.find("tubs", "tub", tub).isPresent(), "tub-known", tub);
        fill(soak, tub);
        faults.unless(
                time(soak, "fillAt").isBefore(time(soak, "readyAt"))
                        && !time(soak, "latestGrindAt").isBefore(time(soak, "readyAt")),
                "soak-runs-forward",
                tub);
        List<String> lots = texts(soak, "beanLots");
        faults.unless(lots.size() <= 2 && lots.stream().distinct().count() == lots.size(), "bean-lots-of-tub", tub);
        long grams =
                items(soak, "beanLotGrams").stream().mapToLong(JsonNode::asLong).sum();
        faults.unless(
                !soak.has("beanLotGrams")
                        || grams == whole(soak, "beansGrams")
                                && items(soak, "beanLotGrams").size() == lots.size(),
                "bean-lots-add-up",
                tub);
        List<String> drawing = plan.rows("batches").stream()
                .filter(batch -> items(batch, "soaks").stream().anyMatch(PlanFile.same(soak, "tub")))
                .map(batch -> text(batch, "id"))
                .sorted()
                .toList();
        faults.unless(drawing.equals(texts(soak, "batches").stream().sorted().toList()), "batches-of-tub", tub);
        texts(soak, "batches").forEach(batch -> grind(soak, batch));
        order(soak);
        equivalent(soak);
    }

    private void fill(JsonNode soak, String tub) {
        if (plan.isFrozen("tub-filled", tub)) return;
        boolean somebody = plan.rows("presence").stream()
                .anyMatch(there -> !time(soak, "fillAt").isBefore(time(there, "from"))
                        && time(soak, "fillAt").isBefore(time(there, "until")));
        faults.unless(somebody, "fill-when-somebody-is-there", tub);
        faults.unless(!time(soak, "fillAt").isBefore(time(plan.root, "computedAt")), "fill-not-in-the-past", tub);
    }

    private void grind(JsonNode soak, String batch) {
        String where = text(soak, "tub") + " " + batch;
        JsonNode recipe = plan.recipeOf(plan.get("batches", "id", batch));
        faults.unless(text(recipe, "soakGroup").equals(text(soak, "soakGroup")), "soak-group", where);
        plan.steps(batch).stream().findFirst().ifPresent(first -> {
            boolean told = isKept(batch, first) && isTold(batch);
            faults.unless(!time(first, "start").isBefore(time(soak, "readyAt")) || told, "grind-when-ready", where);
            faults.unless(
                    !time(first, "start").isAfter(time(soak, "latestGrindAt")) || told, "grind-not-too-late", where);
        });
    }

    /** What a revision does not move any more: begun, to begin within the hour, or labelled. */
    private boolean isKept(String batch, JsonNode first) {
        if (plan.root.path("revisionOf").isNull()) return false;
        return plan.isFrozen("batch-started", batch)
                || plan.isFrozen("lot-labelled", text(plan.get("batches", "id", batch), "lot"))
                || !time(first, "start").isAfter(time(plan.root, "computedAt").plusMinutes(FREEZE_MINUTES));
    }

    private boolean isTold(String batch) {
        return texts(plan.root, "warnings").stream().anyMatch(warning -> warning.startsWith(batch + " is ground at "));
    }

    private void order(JsonNode soak) {
        List<Long> grinds = texts(soak, "batches").stream()
                .map(plan::begins)
                .flatMap(Optional::stream)
                .toList();
        faults.unless(grinds.equals(grinds.stream().sorted().toList()), "tub-in-grinding-order", text(soak, "tub"));
    }

    /** Uptake is the faster the warmer: colder than the reference all the while counts less than the clock, warmer more. */
    private void equivalent(JsonNode soak) {
        Optional<Long> first = texts(soak, "batches").stream()
                .map(plan::begins)
                .flatMap(Optional::stream)
                .min(Long::compare);
        if (first.isEmpty()) return;
        long clock = first.get() - minute(soak, "fillAt");
        long counted = whole(soak, "equivalentMinutes");
        long water = whole(soak, "waterTenthsCelsius");
        long room = whole(soak, "roomTenthsCelsius");
        if (Math.max(water, room) <= REFERENCE_TENTHS)
            faults.unless(counted <= clock + 1, "equivalent-soak", text(soak, "tub") + ": " + counted + " of " + clock);
        if (Math.min(water, room) >= REFERENCE_TENTHS)
            faults.unless(counted >= clock - 1, "equivalent-soak", text(soak, "tub") + ": " + counted + " of " + clock);
    }
}
