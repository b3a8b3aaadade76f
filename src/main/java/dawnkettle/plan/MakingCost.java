package dawnkettle.plan;

import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import java.math.RoundingMode;

/**
 * What one pack more costs to make, roughly: beans and the wages of a full kettle. In the currency's smallest unit. The
 * cost report knows better afterwards; this is for deciding whether one more is worth making.
 */
final class MakingCost {
    private static final double HALF_MINUTES_AN_HOUR = 120;

    /** Where no beans are priced: what making costs of a pack's price, in percent (a guess, no source). */
    private static final long PERCENT_OF_PRICE = 60;

    private final Shop shop;

    MakingCost(Shop shop) {
        this.shop = shop;
    }

    long of(Product product) {
        Recipe recipe = shop.recipeOf(product);
        double perKilogram = perKilogram(recipe);
        if (perKilogram == 0) return product.price().minor() * PERCENT_OF_PRICE / 100;
        double kilograms = product.net().inGrams(RoundingMode.UP) / 1000.0;
        return Math.round(perKilogram * kilograms);
    }

    /** A kilogram of product before packing; 0 where the beans have no price. */
    private double perKilogram(Recipe recipe) {
        double yield = recipe.yield().mean().asDecimal().doubleValue()
                * recipe.yield().trim().rest().asDecimal().doubleValue();
        double input = recipe.madeFrom().isPresent()
                ? perKilogram(shop.recipe(recipe.madeFrom().get()))
                : beans(recipe.soakGroup().orElseThrow());
        if (input == 0 || yield == 0) return 0;
        double kettle = recipe.kettle().most().inGrams(RoundingMode.DOWN) / 1000.0;
        return (input + wages(recipe) / kettle) / yield;
    }

    /** A kilogram of dry beans of a soak group, by the price list of materials. */
    double beans(String soakGroup) {
        return shop.materials().stream()
                .filter(material -> material.kind() == Material.Kind.BEANS
                        && material.soakGroup().equals(soakGroup))
                .mapToDouble(material -> (double) material.price().minor() / Math.max(1, material.packSize()))
                .findFirst()
                .orElse(0);
    }

    private double wages(Recipe recipe) {
        long halfMinutes = 0;
        for (Step step : recipe.steps()) halfMinutes += (long) step.minutes() * step.halfHands();
        return shop.costs().hourlyWage().minor() * (halfMinutes / HALF_MINUTES_AN_HOUR);
    }
}
