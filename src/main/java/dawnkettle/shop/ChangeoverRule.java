package dawnkettle.shop;

/**
 * What it takes to go from one recipe to another at the stations of a stage.
 *
 * @param minutes between two different recipes
 * @param afterFlavoured from a flavoured recipe to a plain one
 * @param afterAllergen from a recipe with an allergen that the next does not have
 */
public record ChangeoverRule(String stage, int minutes, int afterFlavoured, int afterAllergen) {
    /** Minutes between a batch of {@code from} and one of {@code to}; 0 for the same recipe. */
    public int between(Recipe from, Recipe to) {
        if (from.code().equals(to.code())) return 0;
        int needed = minutes;
        if (from.flavoured() && !to.flavoured()) needed = Math.max(needed, afterFlavoured);
        if (!to.allergens().containsAll(from.allergens())) needed = Math.max(needed, afterAllergen);
        return needed;
    }
}
