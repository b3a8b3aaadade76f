package dawnkettle.plan;

import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Yield;
import dawnkettle.stock.Fact.Yielded;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What all recipes are counted to give: plans are made with it, and say so. */
public record Yields(List<YieldEstimate> estimates) {
    private static final int PLACES = 6;

    public Yields {
        estimates = List.copyOf(estimates);
    }

    /** @param records what batches gave, the oldest first; of a lot's records the last one counts */
    public static Yields of(Shop shop, List<Yielded> records) {
        Map<String, Yielded> lots = new LinkedHashMap<>();
        for (Yielded one : records) {
            lots.remove(one.lot().text());
            lots.put(one.lot().text(), one);
        }
        return new Yields(shop.recipes().stream()
                .map(recipe -> YieldEstimate.of(recipe, gave(recipe, List.copyOf(lots.values()))))
                .toList());
    }

    private static List<BigDecimal> gave(Recipe recipe, List<Yielded> lots) {
        return lots.stream()
                .filter(one ->
                        one.recipe().equals(recipe.code()) && !one.input().isZero())
                .map(Yields::gave)
                .toList();
    }

    /** Product from one of what went in. */
    public static BigDecimal gave(Yielded one) {
        return BigDecimal.valueOf(one.product().milligrams())
                .divide(BigDecimal.valueOf(one.input().milligrams()), PLACES, RoundingMode.HALF_UP);
    }

    /** The shop with the yields that plans count with. */
    public Shop in(Shop shop) {
        if (estimates.stream().noneMatch(YieldEstimate::isMoved)) return shop;
        List<Recipe> recipes = new ArrayList<>();
        for (YieldEstimate estimate : estimates) recipes.add(counted(estimate));
        return shop.withRecipes(recipes);
    }

    private static Recipe counted(YieldEstimate estimate) {
        Recipe recipe = estimate.recipe();
        Yield written = recipe.yield();
        return recipe.withYield(new Yield(estimate.counted(), written.spread(), written.trim()));
    }

    /** A sentence for each yield that is not the written one; they stand on the plan, and on its sheets. */
    public List<String> sentences() {
        return estimates.stream()
                .filter(YieldEstimate::isMoved)
                .map(YieldEstimate::sentence)
                .toList();
    }
}
