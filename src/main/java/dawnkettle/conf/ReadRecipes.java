package dawnkettle.conf;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.Coagulant;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Kettle;
import dawnkettle.shop.Limits;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Step;
import dawnkettle.shop.Yield;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads {@code recipes.toml}: how things are made. */
final class ReadRecipes {
    static final String FILE = "recipes.toml";

    private final Known known;

    ReadRecipes(Known known) {
        this.known = known;
    }

    List<Placed<Recipe>> read(Section file) {
        List<Section> sections = file.sections("recipe");
        file.noMore();
        for (Section section : sections) known.recipes.declare(section.need("code", "\"firm\""));
        List<Placed<Recipe>> recipes = new ArrayList<>();
        for (Section section : sections) {
            int before = section.problems().count();
            Optional<Recipe> recipe = recipe(section);
            section.noMore();
            if (section.problems().count() == before)
                recipe.ifPresent(sound -> recipes.add(new Placed<>(sound, section.place())));
        }
        return recipes;
    }

    private Optional<Recipe> recipe(Section from) {
        int before = from.problems().count();
        String code = from.find("code").map(Written::text).orElse("-");
        Optional<String> group = from.find("soak_group").map(known.soakGroups::refer);
        Optional<String> parent = from.find("made_from").map(known.recipes::refer);
        if (group.isPresent() == parent.isPresent())
            from.problems()
                    .add(
                            from.place(),
                            "recipe \"" + code + "\" says "
                                    + (group.isPresent()
                                            ? "both soak_group and made_from"
                                            : "neither soak_group nor made_from"),
                            "write the one that it is made from");
        String name = from.need("name", "\"Firm tofu\"").words();
        String mark = mark(from.need("mark", "\"FI\""));
        Kettle kettle = kettle(from.needSection("batch"));
        Share water = group.isPresent() ? from.need("water_per_kg", "8").ratio("1", "20") : Share.NONE;
        Optional<Coagulant> coagulant = from.findSection("coagulant").map(this::coagulant);
        Yield yield = yieldOf(from.needSection("yield"));
        List<Ingredient> ingredients = ingredients(from);
        List<Allergen> allergens = Allergens.read(from.needList("allergens", "[\"soy\"]"));
        boolean flavoured = from.find("flavoured").map(Written::truth).orElse(false);
        List<Step> steps = steps(from.sections("steps"), parent.isPresent() || group.isEmpty());
        Limits limits = from.findSection("limits").map(ReadLimits::read).orElse(Limits.CAREFUL);
        if (from.problems().count() > before) return Optional.empty();
        return Optional.of(new Recipe(
                code,
                name,
                mark,
                group,
                parent,
                kettle,
                water,
                coagulant,
                yield,
                ingredients,
                allergens,
                flavoured,
                steps,
                limits));
    }

    private String mark(Written mark) {
        if (mark.isBlank() || mark.text().matches("[A-Z]{2}")) return known.marks.declare(mark);
        return mark.bad(mark.text(), "is not a lot mark", "write two capital letters");
    }

    private static Kettle kettle(Section from) {
        int before = from.problems().count();
        Mass least = from.need("least_kg", "15").kilograms();
        Written mostWritten = from.need("most_kg", "30");
        Mass most = mostWritten.kilograms();
        Written stepWritten = from.need("step_kg", "5");
        Mass step = stepWritten.kilograms();
        boolean directSteam = from.find("direct_steam").map(Written::truth).orElse(false);
        from.noMore();
        if (from.problems().count() > before) return new Kettle(step, step, step);
        if (most.compareTo(least) < 0) mostWritten.bad(most, "is below least_kg", "write at least least_kg");
        else if (most.minus(least).milligrams() % step.milligrams() != 0)
            stepWritten.bad(
                    step, "does not lead from least_kg to most_kg", "write a step that divides what lies between");
        return from.problems().count() > before
                ? new Kettle(step, step, step)
                : new Kettle(least, most, step, directSteam);
    }

    private Coagulant coagulant(Section from) {
        Coagulant coagulant = new Coagulant(
                known.materials.refer(from.need("material", "\"nigari\"")),
                from.need("grams_per_kg_milk", "3.2").gramsPerKilogram("50"),
                from.find("strength")
                        .map(strength -> strength.ratio("0.01", "1"))
                        .orElse(Share.WHOLE));
        from.noMore();
        return coagulant;
    }

    private static Yield yieldOf(Section from) {
        Yield yield = new Yield(
                from.need("mean", "2.56").ratio("0.1", "15"),
                from.need("spread", "0.08").ratio("0", "2"),
                from.need("trim", "0.01").ratio("0", "0.5"));
        from.noMore();
        return yield;
    }

    private List<Ingredient> ingredients(Section from) {
        return from.find("ingredients").isEmpty()
                ? List.of()
                : ReadStations.each(
                        from.sections("ingredients"),
                        one -> new Ingredient(
                                known.materials.refer(one.need("material", "\"sesame\"")),
                                one.need("grams_per_kg", "12").gramsPerKilogram("500")));
    }

    private List<Step> steps(List<Section> sections, boolean afterAnother) {
        if (!afterAnother && !sections.isEmpty())
            sections.get(0)
                    .find("wait_minutes")
                    .ifPresent(wait -> wait.bad(0, "stands at the first step", "leave it out: nothing comes before"));
        return ReadStations.each(sections, this::step);
    }

    private Step step(Section from) {
        return new Step(
                from.need("name", "\"press\"").words(),
                known.stages.refer(from.need("stage", "\"press\"")),
                from.need("minutes", "25").whole(1, 2_880),
                from.need("hands", "0.5").halfHands(50),
                from.find("wait_minutes")
                        .map(wait -> OptionalInt.of(wait.whole(0, 2_880)))
                        .orElse(OptionalInt.empty()),
                from.find("target_c").map(target -> target.celsius(-5, 200)));
    }
}
