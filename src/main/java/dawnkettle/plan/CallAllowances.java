package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.plan.Allowances.LateDay;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the soak call allows for that is not in the book yet. One bean serves many products, so that the kilograms of a
 * soak group are decided together: of all that came after the call on such weekdays, counted as dry beans, the amount at
 * which one kilogram more costs as much left over (the beans, soaked for nothing) as it brings (what its products sell
 * for less their making). Products share it as they usually do. Drawn towards nothing while history is short.
 */
public final class CallAllowances {
    private final Shop shop;
    private final LocalDate productionDate;
    private final List<LateDay> history;
    private final MakingCost costs;

    private CallAllowances(Shop shop, LocalDate productionDate, List<LateDay> history) {
        this.shop = shop;
        this.productionDate = productionDate;
        this.history = history;
        this.costs = new MakingCost(shop);
    }

    /** @param history packs that came after the soak call of earlier making days, after their close too */
    public static List<Evening.Allowance> of(Shop shop, LocalDate productionDate, List<LateDay> history) {
        CallAllowances call = new CallAllowances(shop, productionDate, history);
        List<Evening.Allowance> all = new ArrayList<>();
        shop.recipes().stream()
                .flatMap(recipe -> recipe.soakGroup().stream())
                .distinct()
                .forEach(group -> all.addAll(call.of(group)));
        return all;
    }

    private List<Evening.Allowance> of(String group) {
        Map<LocalDate, Integer> byDay = new TreeMap<>();
        Map<Product, Long> packs = new LinkedHashMap<>();
        double margin = 0;
        double kilograms = 0;
        for (Product product : shop.products()) {
            if (!group.equals(group(shop.recipeOf(product)))) continue;
            double beans = beans(product);
            for (LateDay day : history) {
                if (!counts(day, product)) continue;
                byDay.merge(day.productionDate(), (int) Math.round(day.packs() * beans), Integer::sum);
                packs.merge(product, (long) day.packs(), Long::sum);
                kilograms += day.packs() * beans;
                margin += day.packs() * Math.max(0, product.price().minor() - costs.of(product));
            }
        }
        if (kilograms == 0) return List.of();
        Newsvendor vendor =
                Newsvendor.ofOneDay(Math.round(margin / kilograms * 1000), Math.round(costs.beans(group) * 1000));
        int best = (int) vendor.best(List.copyOf(byDay.values()));
        return shared(Allowances.shrunk(best, byDay.size()) / kilograms, packs);
    }

    private boolean counts(LateDay day, Product product) {
        return day.product().equals(product.code())
                && day.productionDate().getDayOfWeek() == productionDate.getDayOfWeek()
                && day.productionDate().isBefore(productionDate);
    }

    /** Packs of each product, as its share of all that ever came. */
    private List<Evening.Allowance> shared(double share, Map<Product, Long> packs) {
        List<Evening.Allowance> all = new ArrayList<>();
        packs.forEach((product, came) -> {
            int allowed = (int) Math.round(came * share);
            if (allowed > 0) all.add(new Evening.Allowance(product.code(), productionDate, allowed));
        });
        return all;
    }

    private String group(Recipe recipe) {
        return recipe.soakGroup()
                .orElseGet(() -> group(shop.recipe(recipe.madeFrom().orElseThrow())));
    }

    /** Kilograms of dry beans in one pack. */
    double beans(Product product) {
        return product.net().inGrams(RoundingMode.UP) / 1000.0 / perBeans(shop.recipeOf(product));
    }

    private double perBeans(Recipe recipe) {
        double own = recipe.yield().mean().asDecimal().doubleValue()
                * recipe.yield().trim().rest().asDecimal().doubleValue();
        return recipe.madeFrom().isPresent()
                ? own * perBeans(shop.recipe(recipe.madeFrom().get()))
                : own;
    }

    /** Dry beans that allowances stand for, by soak group. */
    static Map<String, Mass> beans(Shop shop, List<Evening.Allowance> allowances) {
        CallAllowances call = new CallAllowances(shop, LocalDate.EPOCH, List.of());
        Map<String, Mass> beans = new TreeMap<>();
        for (Evening.Allowance one : allowances) {
            Product product = shop.product(one.product());
            beans.merge(
                    call.group(shop.recipeOf(product)),
                    Mass.grams(Math.round(1000 * call.beans(product) * one.packs())),
                    Mass::plus);
        }
        return beans;
    }
}
