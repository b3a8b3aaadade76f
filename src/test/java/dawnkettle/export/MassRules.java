package dawnkettle.export;

import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.sum;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.texts;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** Every gram of beans and of product is accounted for. */
final class MassRules {
    private static final long MILLION = 1_000_000;

    private final PlanFile plan;
    private final Faults faults;

    MassRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        plan.rows("batches").forEach(this::batch);
        plan.rows("soak").forEach(this::tub);
    }

    private void batch(JsonNode batch) {
        String id = text(batch, "id");
        JsonNode recipe = plan.recipeOf(batch);
        boolean soaked = recipe.hasNonNull("soakGroup");
        Map<String, Long> parents = plan.parents(id);
        long fed = parents.values().stream().mapToLong(Long::longValue).sum();
        long in = soaked ? whole(batch, "beansGrams") : fed;
        kettle(batch, recipe, soaked ? "beans" : "input", in);
        faults.unless(soaked ? fed == 0 : whole(batch, "beansGrams") == 0, "beans-or-parents", id);
        parents.keySet()
                .forEach(parent -> faults.unless(
                        text(plan.get("batches", "id", parent), "recipe").equals(text(recipe, "madeFrom")),
                        "parent-of-the-recipe",
                        id + " from " + parent));
        faults.unless(
                sum(items(batch, "soaks").stream(), "grams") == whole(batch, "beansGrams"), "beans-from-tubs", id);
        closure(batch, recipe, in);
        materialLots(batch);
    }

    private void kettle(JsonNode batch, JsonNode recipe, String what, long in) {
        long least = whole(recipe, what + "LeastGrams");
        long step = Math.max(1, whole(recipe, what + "StepGrams"));
        faults.unless(
                in >= least && in <= whole(recipe, what + "MostGrams"), "kettle-size", text(batch, "id") + ": " + in);
        faults.unless((in - least) % step == 0, "kettle-step", text(batch, "id") + ": " + in);
    }

    private void closure(JsonNode batch, JsonNode recipe, long in) {
        String id = text(batch, "id");
        long expected = whole(batch, "expectedGrams");
        long yielded = in * whole(recipe, "yieldMillionths") / MILLION;
        faults.unless(expected == yielded, "yield-of-recipe", id + ": " + expected + ", not " + yielded);
        long said = Math.round(whole(recipe, "yieldMillionths") / 1000.0);
        faults.unless(whole(recipe, "gramsPerKgBeans") == said, "yield-as-said", text(recipe, "recipe"));
        long packed = items(batch, "packs").stream()
                .mapToLong(packs -> whole(packs, "packs") * net(text(packs, "product")))
                .sum();
        long out = packed + 1000 * (whole(batch, "trimGrams") + sum(items(batch, "feeds").stream(), "grams"));
        faults.unless(Math.abs(out - 1000 * expected) <= 500, "batch-mass", id + ": " + out + " mg of " + expected);
        long trim = expected * whole(recipe, "trimShareMillionths") / MILLION;
        faults.unless(whole(batch, "trimGrams") >= trim, "trim-share", id + ": less than " + trim);
        items(batch, "feeds")
                .forEach(feed -> faults.unless(
                        plan.find("batches", "id", text(feed, "batch")).isPresent(), "feeds-a-batch", id));
    }

    private long net(String product) {
        return whole(plan.get("products", "product", product), "netMilligrams");
    }

    private void materialLots(JsonNode batch) {
        Set<String> soaked = new HashSet<>();
        for (JsonNode part : items(batch, "soaks"))
            soaked.addAll(texts(plan.get("soak", "tub", text(part, "tub")), "beanLots"));
        faults.unless(texts(batch, "materialLots").containsAll(soaked), "material-lots", text(batch, "id"));
    }

    private void tub(JsonNode soak) {
        String tub = text(soak, "tub");
        long drawn = plan.rows("batches").stream()
                .flatMap(batch -> items(batch, "soaks").stream())
                .filter(part -> text(part, "tub").equals(tub))
                .mapToLong(part -> whole(part, "grams"))
                .sum();
        faults.unless(
                whole(soak, "beansGrams") == drawn + whole(soak, "leftOverGrams"),
                "tub-balance",
                tub + ": " + drawn + " drawn");
        JsonNode vessel = plan.get("tubs", "tub", tub);
        faults.unless(whole(soak, "beansGrams") <= whole(vessel, "mostBeansGrams"), "tub-most", tub);
    }
}
