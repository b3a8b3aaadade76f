package dawnkettle.history;

import dawnkettle.measure.Mass;
import dawnkettle.plan.MassBalance;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What the batches took, by material and making day, in grams. */
final class Used {
    private final Shop shop;
    private final Map<String, Map<LocalDate, Long>> grams = new TreeMap<>();

    Used(Shop shop, List<Lot> lots) {
        this.shop = shop;
        lots.forEach(this::add);
    }

    Map<LocalDate, Long> of(Material material) {
        return grams.getOrDefault(material.code(), Map.of());
    }

    private void add(Lot lot) {
        lot.recipe.soakGroup().ifPresent(group -> add(beansOf(group), lot, lot.inputGrams));
        lot.recipe.coagulant().ifPresent(coagulant -> {
            Mass beans = Mass.grams(lot.inputGrams);
            Mass milk = MassBalance.milk(beans, beans.times(lot.recipe.water(), RoundingMode.HALF_UP));
            add(coagulant.material(), lot, milk.times(coagulant.perMilk(), RoundingMode.HALF_UP));
        });
        for (Ingredient ingredient : lot.recipe.ingredients())
            add(
                    ingredient.material(),
                    lot,
                    Mass.grams(lot.productGrams).times(ingredient.perProduct(), RoundingMode.HALF_UP));
    }

    private String beansOf(String soakGroup) {
        return shop.materials().stream()
                .filter(material -> material.soakGroup().equals(soakGroup))
                .findFirst()
                .orElseThrow()
                .code();
    }

    private void add(String material, Lot lot, Mass mass) {
        add(material, lot, mass.inGrams(RoundingMode.HALF_UP));
    }

    private void add(String material, Lot lot, long mass) {
        grams.computeIfAbsent(material, code -> new TreeMap<>()).merge(lot.day, mass, Long::sum);
    }
}
