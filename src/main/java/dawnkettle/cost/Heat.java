package dawnkettle.cost;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.KettleHeat;
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
    /** Water that beans bring from the soak, by their mass, as the plan counts it. */
    private static final double TAKEN_UP = 1.15;

    /** Solids of dry beans (USDA SR, raw soybeans, NDB 16108). */
    private static final double SOLIDS = 0.9146;

    /** Heat capacity of firm tofu in kJ/(kg K), by {@link KettleHeat#specificHeat} at 83 % water. */
    private static final double OF_TOFU = 3.61;

    /** Where it comes from, in °C: cold holding by the Food Code 3-501.16 (from memory, sure). */
    private static final double COLD_ROOM = 5;

    private Heat() {}

    /** Of slurry, in kilojoules. */
    static long boiling(Recipe recipe, Mass beans, Celsius tap) {
        double slurry = 1 + TAKEN_UP + recipe.water().asDecimal().doubleValue();
        double capacity = KettleHeat.specificHeat(1 - SOLIDS / slurry);
        return Math.round(kilograms(beans) * slurry * capacity * (KettleHeat.BOILING - tap.degrees()));
    }

    /** Of what is fried, in kilojoules; nothing where a recipe takes no oil. */
    static long frying(Shop shop, Recipe recipe, Mass input, Mass product) {
        Mass oil = Mass.ZERO;
        for (Ingredient ingredient : recipe.ingredients())
            if (shop.material(ingredient.material()).kind() == Material.Kind.OIL)
                oil = oil.plus(product.times(ingredient.perProduct(), RoundingMode.HALF_UP));
        if (oil.isZero()) return 0;
        double steam = kilograms(input.plus(oil).minusOrZero(product)) * KettleHeat.STEAM;
        return Math.round(steam + kilograms(input) * OF_TOFU * (KettleHeat.BOILING - COLD_ROOM));
    }

    private static double kilograms(Mass mass) {
        return mass.milligrams() / 1e6;
    }
}
