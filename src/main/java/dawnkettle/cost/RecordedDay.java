package dawnkettle.cost;

import dawnkettle.book.MakingDates;
import dawnkettle.cost.MadeDay.Made;
import dawnkettle.measure.Mass;
import dawnkettle.plan.MassBalance;
import dawnkettle.shop.Coagulant;
import dawnkettle.shop.Ingredient;
import dawnkettle.shop.Material;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.stock.Fact.Packed;
import dawnkettle.stock.Fact.Soaked;
import dawnkettle.stock.Fact.Yielded;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * One making day as people wrote it down: what went to soak, what each batch gave, what was filled from it.
 *
 * <p>Of a lot's records the last one counts. Work and water go by the recipe, as nobody writes them down. What a recipe
 * took is shared by mass over all that was filled from it and what it was made into. A recipe or product that the shop no
 * longer has is left out.
 */
public final class RecordedDay {
    /** Soaking water by the mass of the beans, as the plan counts it. */
    static final int SOAKING_WATER = 3;

    private static final int SECONDS_A_MINUTE = 60;
    private static final int HALVES = 2;

    private final LocalDate date;
    private final Shop shop;
    private final Map<String, String> materials;
    private final Map<String, Yielded> yields = new TreeMap<>();
    private final Map<String, Packed> packs = new TreeMap<>();
    private final Map<String, Soaked> tubs = new TreeMap<>();
    private final Map<String, Contents> contents = new HashMap<>();

    public RecordedDay(LocalDate date, Shop shop) {
        this(date, shop, Map.of());
    }

    /** @param materials of which material each lot of beans is */
    public RecordedDay(LocalDate date, Shop shop, Map<String, String> materials) {
        this.date = date;
        this.shop = shop;
        this.materials = Map.copyOf(materials);
    }

    public void add(Yielded batch) {
        if (shop.recipes().stream().anyMatch(recipe -> recipe.code().equals(batch.recipe())))
            yields.put(batch.lot().text(), batch);
    }

    public void add(Packed filled) {
        if (shop.findProduct(filled.product()).isPresent())
            packs.put(filled.lot().text() + " " + filled.product(), filled);
    }

    public void add(Soaked tub) {
        tubs.put(tub.tub() + " " + tub.beanLot(), tub);
    }

    /** Whether anything was filled, so that there is something to cost. */
    public boolean isWhole() {
        return !packs.isEmpty() && !yields.isEmpty();
    }

    /** @param lots what each lot of beans cost, as far as it is known; the standard price stands in for the others */
    public MadeDay made(Map<String, UnitPrice> lots) {
        BeanPrices prices = new BeanPrices(shop, lots);
        tubs.values().forEach(tub -> prices.add(groupOf(tub), tub.beanLot(), tub.beans()));
        return new MadeDay(date, rows(prices), prices.all(), water(), vans());
    }

    /** The soak group of a tub's beans: of the material that its lot is of, else the shop's first. */
    private String groupOf(Soaked tub) {
        return shop.findMaterial(materials.getOrDefault(tub.beanLot(), ""))
                .or(() -> shop.materials().stream()
                        .filter(material -> material.kind() == Material.Kind.BEANS)
                        .findFirst())
                .map(Material::soakGroup)
                .orElse("");
    }

    private List<Made> rows(BeanPrices prices) {
        Map<String, Integer> counts = new TreeMap<>();
        packs.values().forEach(filled -> counts.merge(filled.product(), filled.packs(), Integer::sum));
        counts.values().removeIf(count -> count == 0);
        Contents lost = shop.recipes().stream()
                .filter(recipe -> outputs(recipe, counts).isEmpty())
                .map(this::contentsOf)
                .reduce(Contents.ofBeans(leftOver()), Contents::plus);
        List<Mass> masses =
                counts.keySet().stream().map(product -> net(product, counts)).toList();
        List<Contents> losses = masses.isEmpty() ? List.of() : lost.over(masses);
        List<Made> rows = new ArrayList<>();
        for (String product : counts.keySet()) {
            Contents all = share(product, counts).plus(losses.get(rows.size()));
            rows.add(DayTrace.row(shop, product, counts.get(product), all, prices));
        }
        return rows;
    }

    /** Soaked beans that no batch took are paid for all the same, and borne by what is made. */
    private Map<String, Mass> leftOver() {
        Map<String, Mass> left = new TreeMap<>();
        for (Soaked tub : tubs.values()) left.merge(groupOf(tub), tub.beans(), Mass::plus);
        for (Yielded batch : yields.values())
            shop.recipe(batch.recipe())
                    .soakGroup()
                    .ifPresent(group -> left.computeIfPresent(group, (any, mass) -> mass.minusOrZero(batch.input())));
        return left;
    }

    private Mass net(String product, Map<String, Integer> counts) {
        return shop.product(product).net().times(counts.get(product));
    }

    /** What a product carries of its recipe. */
    private Contents share(String product, Map<String, Integer> counts) {
        Recipe recipe = shop.recipeOf(shop.product(product));
        Map<String, Mass> outputs = outputs(recipe, counts);
        int place = List.copyOf(outputs.keySet()).indexOf("product " + product);
        return contentsOf(recipe).over(List.copyOf(outputs.values())).get(place);
    }

    /** What became of a recipe: packs by product, and what other recipes took. */
    private Map<String, Mass> outputs(Recipe recipe, Map<String, Integer> counts) {
        Map<String, Mass> outputs = new TreeMap<>();
        for (String product : counts.keySet())
            if (shop.product(product).recipe().equals(recipe.code()))
                outputs.put("product " + product, net(product, counts));
        for (Yielded batch : yields.values())
            if (shop.recipe(batch.recipe())
                    .madeFrom()
                    .filter(recipe.code()::equals)
                    .isPresent()) outputs.merge("recipe " + batch.recipe(), batch.input(), Mass::plus);
        return outputs;
    }

    /** Everything that went into a recipe's batches, through whatever they were made from. */
    private Contents contentsOf(Recipe recipe) {
        Contents known = contents.get(recipe.code());
        if (known != null) return known;
        Contents all = Contents.NOTHING;
        for (Yielded batch : yields.values())
            if (batch.recipe().equals(recipe.code())) all = all.plus(ofBatch(recipe, batch));
        if (recipe.madeFrom().isPresent()
                && yields.values().stream().anyMatch(b -> b.recipe().equals(recipe.code())))
            all = all.plus(ofParent(recipe, shop.recipe(recipe.madeFrom().get())));
        contents.put(recipe.code(), all);
        return all;
    }

    private Contents ofParent(Recipe recipe, Recipe parent) {
        Map<String, Integer> counts = new TreeMap<>();
        packs.values().forEach(filled -> counts.merge(filled.product(), filled.packs(), Integer::sum));
        Map<String, Mass> outputs = outputs(parent, counts);
        int place = List.copyOf(outputs.keySet()).indexOf("recipe " + recipe.code());
        return contentsOf(parent).over(List.copyOf(outputs.values())).get(place);
    }

    private Contents ofBatch(Recipe recipe, Yielded batch) {
        long halfSeconds = 0;
        for (Step step : recipe.steps()) halfSeconds += (long) step.minutes() * SECONDS_A_MINUTE * step.halfHands();
        Mass beans = recipe.madeFrom().isEmpty() ? batch.input() : Mass.ZERO;
        Map<String, Mass> used = new TreeMap<>();
        recipe.coagulant().ifPresent(coagulant -> used.put(coagulant.material(), dose(recipe, coagulant, beans)));
        for (Ingredient ingredient : recipe.ingredients())
            used.merge(
                    ingredient.material(),
                    batch.product().times(ingredient.perProduct(), RoundingMode.HALF_UP),
                    Mass::plus);
        return new Contents(
                recipe.soakGroup().map(group -> Map.of(group, beans)).orElse(Map.of()),
                halfSeconds / HALVES,
                heat(recipe, batch),
                used);
    }

    private long heat(Recipe recipe, Yielded batch) {
        if (recipe.madeFrom().isPresent()) return Heat.frying(shop, recipe, batch.input(), batch.product());
        return Heat.boiling(recipe, batch.input(), shop.climate().tap(date.getMonth()));
    }

    private static Mass dose(Recipe recipe, Coagulant coagulant, Mass beans) {
        return coagulant.dose(MassBalance.milk(beans, grinding(recipe, beans)));
    }

    private static Mass grinding(Recipe recipe, Mass beans) {
        return beans.times(recipe.water(), RoundingMode.HALF_UP);
    }

    private Mass water() {
        Mass water = Mass.ZERO;
        for (Yielded batch : yields.values()) {
            Recipe recipe = shop.recipe(batch.recipe());
            if (recipe.madeFrom().isEmpty())
                water = water.plus(grinding(recipe, batch.input()))
                        .plus(batch.input().times(SOAKING_WATER));
        }
        return water;
    }

    /** Vans that went with what the day made: each route on each day for which it made any of the products. */
    private int vans() {
        MakingDates dates = new MakingDates(shop.calendar());
        return (int) shop.routes().stream()
                .mapToLong(route -> packs.values().stream()
                        .map(Packed::product)
                        .distinct()
                        .flatMap(product -> dates.deliveryDates(date, route, shop.product(product)).stream())
                        .distinct()
                        .count())
                .sum();
    }
}
