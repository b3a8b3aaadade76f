package dawnkettle.history;

import dawnkettle.history.Lot.Grams;
import dawnkettle.measure.Mass;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Turns wanted mass into batches, by what the shop thinks a recipe gives, and says what they gave. */
final class Kettles {
    /** What the shop makes beyond what is wanted, so that a poor batch does not leave a van short. */
    private static final double SAFETY = 1.01;

    /** How fast the shop's own estimate of a yield follows what it sees, a making day. */
    private static final double LEARNT = 0.08;

    private final Shop shop;
    private final Map<String, Double> estimates = new TreeMap<>();

    Kettles(Shop shop) {
        this.shop = shop;
        for (Recipe recipe : shop.recipes()) estimates.put(recipe.code(), mean(recipe));
    }

    /** Batches for so many grams of packs; made anew from their own parents where the recipe has one. */
    List<Lot> make(LocalDate day, Recipe recipe, long packedGrams) {
        if (packedGrams <= 0) return List.of();
        long input = inputFor(recipe, packedGrams);
        if (recipe.madeFrom().isEmpty()) return brew(day, recipe, sizes(recipe, input));
        List<Lot> parents = make(day, shop.recipe(recipe.madeFrom().get()), Math.round(input / SAFETY));
        long given = parents.stream()
                .mapToLong(lot -> Grams.trimmed(lot.recipe, lot.productGrams))
                .sum();
        List<Lot> lots = new ArrayList<>(parents);
        lots.addAll(brew(day, recipe, evenly(given, recipe.kettle().most())));
        return lots;
    }

    private long inputFor(Recipe recipe, long packedGrams) {
        double usable = estimates.get(recipe.code())
                * recipe.yield().trim().rest().asDecimal().doubleValue();
        return Math.round(packedGrams * SAFETY / usable);
    }

    private List<Lot> brew(LocalDate day, Recipe recipe, List<Long> inputs) {
        Chance chance = new Chance("yield " + recipe.code(), day);
        double spread = recipe.yield().spread().asDecimal().doubleValue() / mean(recipe);
        List<Lot> lots = new ArrayList<>();
        for (long input : inputs) {
            double gave = mean(recipe) * Span.yield(recipe.code(), day) * chance.around(spread);
            long product = Math.round(input * gave / 100) * 100; // the scale shows 0.1 kg
            lots.add(new Lot(LotCode.of(day, recipe.mark(), lots.size() + 1), day, recipe, new Grams(input, product)));
            estimates.merge(
                    recipe.code(),
                    LEARNT / inputs.size() * ((double) product / input - estimates.get(recipe.code())),
                    Double::sum);
        }
        return lots;
    }

    /** Whole kettles in handy steps, as even as can be. */
    private static List<Long> sizes(Recipe recipe, long input) {
        long step = recipe.kettle().step().inGrams();
        long least = recipe.kettle().least().inGrams();
        long most = recipe.kettle().most().inGrams();
        long steps = Math.max(least, (input + step - 1) / step * step) / step;
        long kettles = (steps * step + most - 1) / most;
        List<Long> sizes = new ArrayList<>();
        for (long kettle = 0; kettle < kettles; kettle++)
            sizes.add(Math.max(least, (steps / kettles + (kettle < steps % kettles ? 1 : 0)) * step));
        return sizes;
    }

    /** All of what the parents gave, to 0.1 kg. */
    private static List<Long> evenly(long given, Mass most) {
        long parts = (given + most.inGrams() - 1) / most.inGrams();
        List<Long> sizes = new ArrayList<>();
        for (long part = 0; part < parts; part++) sizes.add(given / parts / 100 * 100);
        return sizes;
    }

    private static double mean(Recipe recipe) {
        return recipe.yield().mean().asDecimal().doubleValue();
    }
}
