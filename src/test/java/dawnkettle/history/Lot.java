package dawnkettle.history;

import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;

/** A batch as it turned out, and the packs of it that are still there. */
final class Lot {
    final LotCode code;
    final LocalDate day;
    final Recipe recipe;
    /** Dry beans, or what it was made from; in grams. */
    final long inputGrams;
    /** Before trimming, in grams. */
    final long productGrams;

    final Map<String, Integer> filled = new TreeMap<>();
    final Map<String, Integer> left = new TreeMap<>();
    private long roomGrams;

    Lot(LotCode code, LocalDate day, Recipe recipe, Grams grams) {
        this.code = code;
        this.day = day;
        this.recipe = recipe;
        this.inputGrams = grams.input();
        this.productGrams = grams.product();
        this.roomGrams = Grams.trimmed(recipe, grams.product());
    }

    /** What goes in and what comes out. */
    record Grams(long input, long product) {
        static long trimmed(Recipe recipe, long product) {
            return Math.round(product * recipe.yield().trim().rest().asDecimal().doubleValue());
        }
    }

    /** Fills as many of {@code wanted} packs as there is room for, and says how many. */
    int fill(Product product, int wanted) {
        int packs = (int) Math.min(wanted, roomGrams / product.net().inGrams());
        if (packs == 0) return 0;
        filled.merge(product.code(), packs, Integer::sum);
        left.merge(product.code(), packs, Integer::sum);
        roomGrams -= packs * product.net().inGrams();
        return packs;
    }

    /** Takes as many of {@code wanted} packs as are left, and says how many. */
    int take(String product, int wanted) {
        int packs = Math.min(wanted, left.getOrDefault(product, 0));
        if (packs > 0) left.merge(product, -packs, Integer::sum);
        return packs;
    }

    int left(String product) {
        return left.getOrDefault(product, 0);
    }
}
