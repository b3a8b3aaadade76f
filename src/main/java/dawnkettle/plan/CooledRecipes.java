package dawnkettle.plan;

import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The shop with every cooling step long enough for the largest block that its recipe is cut into. */
final class CooledRecipes {
    private static final int GRID_MINUTES = 5;

    private final Shop shop;

    CooledRecipes(Shop shop) {
        this.shop = shop;
    }

    Shop shop() {
        return shop.withRecipes(shop.recipes().stream().map(this::cooled).toList());
    }

    private Recipe cooled(Recipe recipe) {
        Optional<Step> bath = Wants.bath(recipe);
        if (bath.isEmpty()) return recipe;
        int needed = needed(recipe, bath.get());
        int cooling = recipe.steps().stream()
                .filter(step -> step.target()
                        .filter(target -> target.degrees() < Cooling.COLD)
                        .isPresent())
                .mapToInt(Step::minutes)
                .sum();
        if (cooling >= needed) return recipe;
        List<Step> steps = new ArrayList<>();
        for (Step step : recipe.steps()) steps.add(step == bath.get() ? longer(step, needed - cooling) : step);
        return recipe.withSteps(steps);
    }

    /** Minutes until the largest block of the recipe is cold; blocks that break the limit are declined elsewhere. */
    private int needed(Recipe recipe, Step bath) {
        double water = bath.target().orElseThrow().degrees();
        return shop.products().stream()
                .filter(product -> product.recipe().equals(recipe.code()))
                .map(Product::packing)
                .flatMap(packing -> packing.block().stream())
                .filter(block -> Cooling.meetsTwoSteps(block, water))
                .mapToInt(block -> Cooling.minutesToCold(block, water))
                .max()
                .orElse(0);
    }

    private static Step longer(Step step, int minutes) {
        int more = (minutes + GRID_MINUTES - 1) / GRID_MINUTES * GRID_MINUTES;
        return new Step(
                step.name(), step.stage(), step.minutes() + more, step.halfHands(), step.longestWait(), step.target());
    }
}
