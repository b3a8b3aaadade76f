package dawnkettle.sheet;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** About how much goes in for what is to be made without a plan: the recipes' mean yields, rounded up to handy weights. */
final class FallbackKettles {
    private final Shop shop;
    private final Map<String, Mass> product = new LinkedHashMap<>();

    FallbackKettles(List<Given> given, Shop shop) {
        this.shop = shop;
        for (Given line : given) {
            Optional<Product> made = shop.findProduct(line.product());
            made.ifPresent(found -> product.merge(found.recipe(), found.net().times(line.packs()), Mass::plus));
        }
    }

    /**
     * @param input dry beans, or the mass of what it is made from
     * @param kettles batches of at most the largest size
     */
    record Need(String recipe, Mass input, long kettles) {}

    /** By recipe; what is made from another is counted first, so that the other's need is whole. */
    List<Need> needs() {
        List<Need> needs = new ArrayList<>();
        for (Recipe recipe : shop.recipes()) if (recipe.madeFrom().isPresent()) need(recipe, needs);
        for (Recipe recipe : shop.recipes()) if (recipe.madeFrom().isEmpty()) need(recipe, needs);
        return needs;
    }

    private void need(Recipe recipe, List<Need> needs) {
        Mass wanted = product.getOrDefault(recipe.code(), Mass.ZERO);
        if (wanted.isZero()) return;
        Mass input = roundedUp(
                dividedUp(
                        dividedUp(wanted, recipe.yield().trim().rest()),
                        recipe.yield().mean()),
                recipe.kettle().step());
        recipe.madeFrom().ifPresent(from -> product.merge(from, input, Mass::plus));
        Mass most = recipe.kettle().most();
        needs.add(new Need(
                recipe.code(), input, input.plus(most).minus(Mass.milligrams(1)).dividedBy(most)));
    }

    private static Mass dividedUp(Mass mass, Share share) {
        return Mass.milligrams(BigDecimal.valueOf(mass.milligrams())
                .divide(share.asDecimal(), 0, RoundingMode.CEILING)
                .longValueExact());
    }

    private static Mass roundedUp(Mass mass, Mass step) {
        return step.times(mass.plus(step).minus(Mass.milligrams(1)).dividedBy(step));
    }
}
