package dawnkettle.export;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import dawnkettle.shop.Kettle;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.shop.Yield;
import java.math.RoundingMode;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Recipes and products as they were counted with, as rows of the open form. */
final class RecipeForm {
    private static final Mass KILOGRAM = Mass.kilograms(1);

    private RecipeForm() {}

    static Row write(Recipe recipe) {
        boolean soaked = recipe.soakGroup().isPresent();
        Kettle kettle = recipe.kettle();
        return new Row()
                .text("recipe", recipe.code())
                .text("soakGroup", recipe.soakGroup())
                .text("madeFrom", recipe.madeFrom())
                .grams("beansLeastGrams", soaked ? kettle.least() : Mass.ZERO)
                .grams("beansMostGrams", soaked ? kettle.most() : Mass.ZERO)
                .grams("beansStepGrams", soaked ? kettle.step() : Mass.ZERO)
                .grams("inputLeastGrams", soaked ? Mass.ZERO : kettle.least())
                .grams("inputMostGrams", soaked ? Mass.ZERO : kettle.most())
                .grams("inputStepGrams", soaked ? Mass.ZERO : kettle.step())
                .grams("gramsPerKgBeans", KILOGRAM.times(recipe.yield().mean(), RoundingMode.HALF_UP))
                .whole("yieldMillionths", recipe.yield().mean().millionths())
                .whole("spreadMillionths", recipe.yield().spread().millionths())
                .whole("trimShareMillionths", recipe.yield().trim().millionths())
                .list(
                        "steps",
                        numbers(recipe.steps()),
                        seq -> step(seq, recipe.steps().get(seq - 1)));
    }

    private static List<Integer> numbers(List<Step> steps) {
        return IntStream.rangeClosed(1, steps.size()).boxed().toList();
    }

    private static Row step(int seq, Step step) {
        Row row = new Row()
                .whole("seq", seq)
                .text("name", step.name())
                .text("stage", step.stage())
                .whole("minutes", step.minutes())
                .people("hands", step.halfHands());
        step.longestWait()
                .ifPresentOrElse(wait -> row.whole("maxWaitMinutes", wait), () -> row.nothing("maxWaitMinutes"));
        step.target()
                .ifPresentOrElse(
                        target -> row.whole("targetTenthsCelsius", target.tenths()),
                        () -> row.nothing("targetTenthsCelsius"));
        return row;
    }

    /** What the plan says of a recipe; its name, mark and materials are the shop's. */
    static Recipe read(Fields fields, Shop shop) {
        Recipe known = known(fields, shop);
        Optional<String> soakGroup = fields.findText("soakGroup");
        String prefix = soakGroup.isPresent() ? "beans" : "input";
        return new Recipe(
                known.code(),
                known.name(),
                known.mark(),
                soakGroup,
                fields.findText("madeFrom"),
                new Kettle(
                        fields.grams(prefix + "LeastGrams"),
                        fields.grams(prefix + "MostGrams"),
                        fields.grams(prefix + "StepGrams"),
                        known.kettle().directSteam()),
                known.water(),
                known.coagulant(),
                new Yield(
                        Share.millionths(fields.whole("yieldMillionths")),
                        Share.millionths(fields.whole("spreadMillionths")),
                        Share.millionths(fields.whole("trimShareMillionths"))),
                known.ingredients(),
                known.allergens(),
                known.flavoured(),
                fields.list("steps", RecipeForm::readStep));
    }

    private static Recipe known(Fields fields, Shop shop) {
        String code = fields.text("recipe");
        try {
            return shop.recipe(code);
        } catch (NoSuchElementException e) {
            throw fields.bad(
                    "recipe", "\"" + code + "\" is no recipe of the shop", "put the recipe back into recipes.toml");
        }
    }

    private static Step readStep(Fields fields) {
        OptionalInt wait = fields.isNothing("maxWaitMinutes")
                ? OptionalInt.empty()
                : OptionalInt.of(fields.count("maxWaitMinutes"));
        Optional<Celsius> target = fields.isNothing("targetTenthsCelsius")
                ? Optional.empty()
                : Optional.of(Celsius.tenths(fields.count("targetTenthsCelsius")));
        return new Step(
                fields.text("name"),
                fields.text("stage"),
                fields.count("minutes"),
                fields.halves("hands"),
                wait,
                target);
    }

    static Row write(Product product) {
        return new Row()
                .text("product", product.code())
                .text("recipe", product.recipe())
                .whole("netMilligrams", product.net().milligrams())
                .whole("packsInCase", product.packsInCase())
                .whole("shelfLifeDays", product.keeping().shelfLifeDays())
                .whole("leastDaysLeft", product.keeping().leastDaysLeft());
    }
}
