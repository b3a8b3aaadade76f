package dawnkettle.cost;

import dawnkettle.cost.MadeDay.Made;
import dawnkettle.measure.Mass;
import dawnkettle.plan.MassBalance;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the same packs would have cost by what is written down: recipes' yields, full kettles, standard prices and rates, the
 * vans and days that there were. What a week cost beyond it is price, use or wages, never volume or mix.
 */
public final class Standard {

    private static final long SECONDS_A_MINUTE = 60;
    private static final int HALVES = 2;

    private final Shop shop;

    public Standard(Shop shop) {
        this.shop = shop.withCosts(shop.costs().standard());
    }

    /** @param days of one week, at least one */
    public WeekCosts week(List<MadeDay> days) {
        return WeekCosts.byWeek(days.stream().map(this::day).toList(), shop).get(0);
    }

    private MadeDay day(MadeDay actual) {
        BeanPrices prices = new BeanPrices(shop, Map.of());
        List<Made> made = actual.made().stream()
                .filter(one -> shop.findProduct(one.product()).isPresent())
                .map(one -> made(one, actual.date(), prices))
                .toList();
        Mass water = Mass.sum(made.stream().map(one -> water(one)).toList());
        return new MadeDay(actual.date(), made, prices.all(), water, actual.routes());
    }

    private Made made(Made actual, LocalDate date, BeanPrices prices) {
        Recipe recipe = shop.recipeOf(shop.product(actual.product()));
        return DayTrace.row(shop, actual.product(), actual.packs(), of(recipe, actual.mass(), date.getMonth()), prices);
    }

    private Mass water(Made made) {
        Recipe recipe = shop.recipeOf(shop.product(made.product()));
        while (recipe.madeFrom().isPresent())
            recipe = shop.recipe(recipe.madeFrom().get());
        return made.beans()
                .times(recipe.water(), RoundingMode.HALF_UP)
                .plus(made.beans().times(RecordedDay.SOAKING_WATER));
    }

    /** What so much of a recipe's product takes, after trimming. */
    private Contents of(Recipe recipe, Mass packed, Month month) {
        Mass product = divided(packed, recipe.yield().trim().rest().asDecimal());
        Mass input = divided(product, recipe.yield().mean().asDecimal());
        Map<String, Mass> used = new TreeMap<>();
        for (Ingredient ingredient : recipe.ingredients())
            used.merge(ingredient.material(), product.times(ingredient.perProduct(), RoundingMode.HALF_UP), Mass::plus);
        long seconds = seconds(recipe, input);
        if (recipe.madeFrom().isPresent())
            return of(shop.recipe(recipe.madeFrom().get()), input, month)
                    .plus(new Contents(Map.of(), seconds, Heat.frying(shop, recipe, input, product), used));
        Mass milk = MassBalance.milk(input, input.times(recipe.water(), RoundingMode.HALF_UP));
        recipe.coagulant()
                .ifPresent(coagulant ->
                        used.put(coagulant.material(), milk.times(coagulant.perMilk(), RoundingMode.HALF_UP)));
        return new Contents(
                Map.of(recipe.soakGroup().orElseThrow(), input),
                seconds,
                Heat.boiling(recipe, input, shop.climate().tap(month)),
                used);
    }

    /** By kettles that are full. */
    private static long seconds(Recipe recipe, Mass input) {
        long halves = recipe.steps().stream()
                .mapToLong((Step step) -> step.minutes() * SECONDS_A_MINUTE * step.halfHands())
                .sum();
        return BigDecimal.valueOf(halves)
                .multiply(BigDecimal.valueOf(input.milligrams()))
                .divide(BigDecimal.valueOf(HALVES * recipe.kettle().most().milligrams()), 0, RoundingMode.HALF_UP)
                .longValueExact();
    }

    private static Mass divided(Mass mass, BigDecimal ratio) {
        return Mass.milligrams(BigDecimal.valueOf(mass.milligrams())
                .divide(ratio, 0, RoundingMode.HALF_UP)
                .longValueExact());
    }
}
