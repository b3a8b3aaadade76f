package dawnkettle.export;

import static dawnkettle.export.PlanFile.halves;
import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.minute;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.time;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;

/** Every step of the recipe once, in order, as long as it takes, and none waits longer than it may. */
final class StepRules {
    private final PlanFile plan;
    private final Faults faults;

    StepRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        for (JsonNode operation : plan.rows("operations"))
            faults.unless(
                    plan.find("batches", "id", text(operation, "batch")).isPresent(),
                    "operation-of-a-batch",
                    text(operation, "batch"));
        plan.rows("batches").forEach(this::batch);
    }

    private void batch(JsonNode batch) {
        String id = text(batch, "id");
        JsonNode recipe = plan.recipeOf(batch);
        List<JsonNode> done = plan.steps(id);
        List<JsonNode> asked = asked(recipe, id, done.size());
        faults.unless(!asked.isEmpty(), "recipe-known", id);
        boolean each = asked.stream()
                .map(step -> whole(step, "seq"))
                .toList()
                .equals(done.stream().map(step -> whole(step, "seq")).toList());
        faults.unless(each, "every-step-once", id);
        if (!each || asked.isEmpty()) return;
        for (int i = 0; i < asked.size(); i++) {
            step(id + " step " + (i + 1), asked.get(i), done.get(i));
            if (i > 0) waits(id + " step " + (i + 1), minute(done.get(i - 1), "end"), asked.get(i), done.get(i));
        }
        for (String parent : plan.parents(id).keySet())
            plan.ends(parent).ifPresent(end -> waits(id + " after " + parent, end, asked.get(0), done.get(0)));
        packDate(batch, done);
        if (!plan.isFrozen("batch-started", id))
            faults.unless(
                    !time(done.get(0), "start").isBefore(time(plan.root, "computedAt")), "start-not-in-the-past", id);
    }

    /** Of a batch that is lost only what was begun. */
    private List<JsonNode> asked(JsonNode recipe, String id, int begun) {
        List<JsonNode> steps = items(recipe, "steps");
        return plan.lostAt(id).isPresent() ? steps.subList(0, Math.min(steps.size(), Math.max(1, begun))) : steps;
    }

    private void step(String where, JsonNode asked, JsonNode done) {
        faults.unless(text(done, "stage").equals(text(asked, "stage")), "step-stage", where);
        faults.unless(minute(done, "end") - minute(done, "start") == whole(asked, "minutes"), "step-minutes", where);
        faults.unless(
                time(done, "start").getSecond() == 0 && time(done, "end").getSecond() == 0, "whole-minutes", where);
        faults.unless(halves(done, "hands") == halves(asked, "hands"), "step-hands", where);
    }

    private void waits(String where, long before, JsonNode asked, JsonNode done) {
        long wait = minute(done, "start") - before;
        faults.unless(wait >= 0, "step-order", where);
        faults.unless(
                !asked.hasNonNull("maxWaitMinutes") || wait <= whole(asked, "maxWaitMinutes"),
                "longest-wait",
                where + ": " + wait);
    }

    /** Packing is the last step that needs hands; where none does, the last step of all. */
    private void packDate(JsonNode batch, List<JsonNode> done) {
        JsonNode packing = done.get(done.size() - 1);
        for (JsonNode step : done) if (halves(step, "hands") > 0) packing = step;
        faults.unless(
                plan.localDate(packing, "start").toString().equals(text(batch, "packDate")),
                "pack-date",
                text(batch, "id"));
    }
}
