package dawnkettle.cost;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Material;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;

/**
 * The heat that a batch takes by its balance: slurry from the tap's temperature to the boil, and what is fried from the
 * cold room to the boil with the water that leaves it. What the kettle and the hold lose is in the cooker's efficiency.
 */
final class Heat {
    /** Heat capacity in kJ/(kg K) by the share of water: 0.837 + 3.349 x (Siebel's form, from memory). */
    private static final double OF_SOLIDS = 0.837;

    private static final double OF_WATER = 3.349;

    /** Water that beans bring from the soak, by their mass, as the plan counts it. */
    private static final double TAKEN_UP = 1.15;

    /** Solids of dry beans (USDA SR, raw soybeans, NDB 16108). */
    private static final double SOLIDS = 0.9146;

    private static final double BOIL = 100;

    /** Latent heat of water at the boil in kJ/kg (from memory). */
    private static final double STEAM = 2_257;

    /** Firm tofu by the form above, and where it comes from. */
    private static final double OF_TOFU = 3.61;

    private static final double COLD_ROOM = 5;

    private Heat() {}

    /** Of slurry, in kilojoules. */
    static long boiling(Recipe recipe, Mass beans, Celsius tap) {
        double slurry = 1 + TAKEN_UP + recipe.water().asDecimal().doubleValue();
        double capacity = OF_SOLIDS + OF_WATER * (1 - SOLIDS / slurry);
        return Math.round(kilograms(beans) * slurry * capacity * (BOIL - tap.degrees()));
    }

    /** Of what is fried, in kilojoules; nothing where a recipe takes no oil. */
    static long frying(Shop shop, Recipe recipe, Mass input, Mass product) {
        Mass oil = Mass.ZERO;
        for (Ingredient ingredient : recipe.ingredients())
            if (shop.material(ingredient.material()).kind() == Material.Kind.OIL)
                oil = oil.plus(product.times(ingredient.perProduct(), RoundingMode.HALF_UP));
        if (oil.isZero()) return 0;
        double steam = kilograms(input.plus(oil).minusOrZero(product)) * STEAM;
        return Math.round(steam + kilograms(input) * OF_TOFU * (BOIL - COLD_ROOM));
    }

    private static double kilograms(Mass mass) {
        return mass.milligrams() / 1e6;
    }
}
