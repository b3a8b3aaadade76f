package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Turns what is wanted into batches: sizes by {@link Kettles}, filled by {@link Filler}, made-from recipes first. */
final class Batches {
    /** More batches than this of one recipe no shop of this size makes in a day. */
    static final int MOST_KETTLES = 60;

    /** Packs do not divide a batch evenly; the sizes are raised until all fit, at most so often. */
    private static final int ROUNDS = 12;

    /** So many rounds that change no size in a row say that there is no more to be had. */
    private static final int PATIENCE = 2;

    private static final long HALF_MINUTES_AN_HOUR = 120;

    /** Minor units a kilogram where no price is written; it only has to be above nothing (the shop's rule, no source). */
    private static final long SOME_PRICE = 100;

    /** More than any shop makes of one recipe: what batches made from it may draw on. */
    private static final Mass PLENTY = Mass.kilograms(100_000);

    private final Shop shop;
    private final Wants wants;
    private final Limits limits;
    private final Map<String, Integer> caps;

    /**
     * What bounds the batches of a day.
     *
     * @param committed beans soaked already, by soak group
     * @param most beans that can be had at all, by soak group
     * @param slots batches of soaked beans that the stations have room for
     * @param caps most batches by recipe, where a try has shown that there is no room for more, and why
     */
    record Limits(Map<String, Mass> committed, Map<String, Mass> most, int slots, Map<String, Integer> caps) {}

    Batches(Shop shop, Wants wants, Limits limits) {
        this.shop = shop;
        this.wants = wants;
        this.limits = limits;
        this.caps = new HashMap<>(limits.caps());
    }

    private int cap(Recipe recipe) {
        return caps.getOrDefault(recipe.code(), MOST_KETTLES);
    }

    List<Brew> make() {
        while (true) {
            Map<String, List<Brew>> brews = settle();
            List<Brew> hungry = brews.values().stream()
                    .flatMap(List::stream)
                    .filter(brew -> !brew.isFedWhole())
                    .toList();
            if (hungry.isEmpty()) return all(brews);
            for (Brew brew : hungry)
                caps.merge(brew.recipe.code(), brews.get(brew.recipe.code()).size() - 1, Math::min);
        }
    }

    /** Raises what is made, a little more each time, until all that is wanted fits or raising changes nothing any more. */
    private Map<String, List<Brew>> settle() {
        Map<String, Mass> extra = new HashMap<>();
        Map<String, List<Mass>> last = Map.of();
        int unchanged = 0;
        for (int round = 1; ; round++) {
            wants.reopen();
            Map<String, List<Brew>> brews = new LinkedHashMap<>();
            Map<String, Mass> missing = new HashMap<>();
            fill(brews, missing, extra);
            Map<String, List<Mass>> sizes = sizes(brews);
            unchanged = sizes.equals(last) ? unchanged + 1 : 0;
            if (missing.isEmpty() || unchanged == PATIENCE || round == ROUNDS) return brews;
            last = sizes;
            int times = round;
            missing.forEach((recipe, mass) -> extra.merge(recipe, mass.times(times), Mass::plus));
        }
    }

    private static Map<String, List<Mass>> sizes(Map<String, List<Brew>> brews) {
        Map<String, List<Mass>> sizes = new HashMap<>();
        brews.forEach((recipe, own) ->
                sizes.put(recipe, own.stream().map(brew -> brew.size).toList()));
        return sizes;
    }

    private List<Brew> all(Map<String, List<Brew>> brews) {
        List<Brew> all = new ArrayList<>();
        for (Recipe recipe : shop.recipes()) {
            List<Brew> own = brews.getOrDefault(recipe.code(), List.of());
            new Filler(own).packSurplus(productsOf(recipe));
            all.addAll(own);
        }
        return all;
    }

    private List<Product> productsOf(Recipe recipe) {
        return shop.products().stream()
                .filter(product -> product.recipe().equals(recipe.code()))
                .filter(product -> Wants.coolsTooSlowly(shop, product).isEmpty())
                .toList();
    }

    private void fill(Map<String, List<Brew>> brews, Map<String, Mass> missing, Map<String, Mass> extra) {
        for (Recipe recipe : madeFromOthers()) {
            Kettles.Source source = new Kettles.Source(recipe.madeFrom().orElseThrow(), SOME_PRICE, Mass.ZERO, PLENTY);
            Kettles.Choice choice = Kettles.choose(List.of(need(recipe, brews, extra)), source, MOST_KETTLES);
            choice.sizes().forEach((code, sizes) -> brews.put(code, brew(recipe, sizes)));
            serve(recipe, brews, missing);
        }
        for (String group : groups()) chooseSoaked(group, brews, extra);
        for (Recipe recipe : shop.recipes()) if (recipe.soakGroup().isPresent()) serve(recipe, brews, missing);
    }

    private void chooseSoaked(String group, Map<String, List<Brew>> brews, Map<String, Mass> extra) {
        List<Kettles.Need> needs = shop.recipes().stream()
                .filter(recipe -> recipe.soakGroup().filter(group::equals).isPresent())
                .map(recipe -> need(recipe, brews, extra))
                .toList();
        Kettles.Source source = new Kettles.Source(
                group,
                beansPerKilogram(group),
                limits.committed().getOrDefault(group, Mass.ZERO),
                limits.most().getOrDefault(group, Mass.ZERO));
        int used = (int) brews.values().stream()
                .flatMap(List::stream)
                .filter(Brew::isSoaked)
                .count();
        Kettles.choose(needs, source, Math.max(0, limits.slots() - used))
                .sizes()
                .forEach((code, sizes) -> brews.put(code, brew(shop.recipe(code), sizes)));
    }

    /** Recipes made from others, those farthest from the beans first. */
    private List<Recipe> madeFromOthers() {
        return shop.recipes().stream()
                .filter(recipe -> recipe.madeFrom().isPresent())
                .sorted(Comparator.comparingInt(this::depth).reversed())
                .toList();
    }

    private int depth(Recipe recipe) {
        return recipe.madeFrom().map(parent -> 1 + depth(shop.recipe(parent))).orElse(0);
    }

    private List<String> groups() {
        return shop.recipes().stream()
                .flatMap(recipe -> recipe.soakGroup().stream())
                .distinct()
                .toList();
    }

    private static List<Brew> brew(Recipe recipe, List<Mass> sizes) {
        List<Brew> brews = new ArrayList<>();
        for (Mass size : sizes) brews.add(new Brew(recipe.code() + "#" + (brews.size() + 1), recipe, size));
        return brews;
    }

    private Kettles.Need need(Recipe recipe, Map<String, List<Brew>> brews, Map<String, Mass> extra) {
        Mass lines = Mass.sum(wants.of(recipe).stream()
                .map(line -> line.product.net().times(line.open()))
                .toList());
        Mass feeds =
                Mass.sum(children(recipe, brews).stream().map(brew -> brew.size).toList());
        return new Kettles.Need(
                recipe,
                lines.plus(feeds).plus(extra.getOrDefault(recipe.code(), Mass.ZERO)),
                wants.likely(recipe),
                pricePerKilogram(recipe),
                wages(recipe).minor(),
                cap(recipe));
    }

    private List<Brew> children(Recipe recipe, Map<String, List<Brew>> brews) {
        return brews.values().stream()
                .flatMap(List::stream)
                .filter(brew ->
                        brew.recipe.madeFrom().filter(recipe.code()::equals).isPresent())
                .toList();
    }

    private void serve(Recipe recipe, Map<String, List<Brew>> brews, Map<String, Mass> missing) {
        List<Brew> own = brews.getOrDefault(recipe.code(), List.of());
        Filler filler = new Filler(own);
        Mass unfed = Mass.ZERO;
        for (Brew child : children(recipe, brews)) unfed = unfed.plus(filler.feed(child));
        List<OpenLine> lines = wants.of(recipe);
        Mass before = declined(lines);
        filler.serve(lines, whyShort(recipe));
        Mass unserved = declined(lines).minus(before);
        Mass gap = unfed.plus(unserved);
        if (!gap.isZero()) missing.put(recipe.code(), gap);
    }

    private static Mass declined(List<OpenLine> lines) {
        return Mass.sum(lines.stream()
                .map(line -> line.product.net().times(line.declined()))
                .toList());
    }

    private String whyShort(Recipe recipe) {
        if (caps.containsKey(recipe.code()))
            return "the day has room for " + cap(recipe) + " batches of " + recipe.name() + ", not for more";
        if (limits.committed().containsKey(recipe.soakGroup().orElse("")))
            return "no more beans were put to soak in time for " + recipe.name();
        return "tubs, beans or cookers do not reach for more " + recipe.name();
    }

    private long beansPerKilogram(String group) {
        return shop.materials().stream()
                .filter(material -> material.kind() == Material.Kind.BEANS
                        && material.soakGroup().equals(group))
                .mapToLong(material -> material.price().minor() / Math.max(1, material.packSize()))
                .findFirst()
                .orElse(SOME_PRICE);
    }

    private long pricePerKilogram(Recipe recipe) {
        long own = shop.products().stream()
                .filter(product -> product.recipe().equals(recipe.code()))
                .mapToLong(product -> product.price().minor()
                        * 1_000
                        / Math.max(1, product.net().inGrams(RoundingMode.UP)))
                .max()
                .orElse(0);
        return Math.max(own, SOME_PRICE);
    }

    private Money wages(Recipe recipe) {
        long halfMinutes = 0;
        for (Step step : recipe.steps()) halfMinutes += (long) step.minutes() * step.halfHands();
        BigDecimal hours = BigDecimal.valueOf(halfMinutes)
                .divide(BigDecimal.valueOf(HALF_MINUTES_AN_HOUR), 6, RoundingMode.HALF_UP);
        return shop.costs().hourlyWage().times(hours, RoundingMode.HALF_UP);
    }
}
