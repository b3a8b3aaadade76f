package dawnkettle.history;

import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** The making days one after the other: what is wanted, what lies ready, what is made, who gets which lot of it. */
final class Days {
    /** What keeps at least so long is kept for tomorrow; the rest is sold at the door. */
    private static final int KEEPS_DAYS = 10;

    /** The allergen's cleaning is worth three times a week, not six. */
    private static final String NOT_DAILY = "sesame";

    private static final Set<DayOfWeek> ITS_DAYS = Set.of(DayOfWeek.MONDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY);

    final List<Lot> lots = new ArrayList<>();
    final List<Gone> delivered = new ArrayList<>();
    final List<Gone> sold = new ArrayList<>();
    private final Shop shop;
    private final OrderBooks books;
    private final Kettles kettles;
    private final List<LocalDate> workDays;
    private final List<Lot> ready = new ArrayList<>();
    private int missing;

    /** Packs of a lot that left; for whom, where it was ordered. */
    record Gone(LocalDate on, String customer, String product, Lot lot, int packs) {}

    Days(Shop shop, OrderBooks books) {
        this.shop = shop;
        this.books = books;
        this.kettles = new Kettles(shop);
        this.workDays = new Span(shop.calendar()).workDays();
        workDays.forEach(this::day);
    }

    /** Lots of which packs are left, oldest first. */
    List<Lot> ready() {
        return List.copyOf(ready);
    }

    /** Packs that could not be had, over all days. */
    int shortPacks() {
        return missing;
    }

    private void day(LocalDate day) {
        for (Recipe recipe : shop.recipes()) {
            Map<Product, Integer> toMake = toMake(day, recipe);
            long grams = toMake.entrySet().stream()
                    .mapToLong(each -> each.getKey().net().inGrams() * each.getValue())
                    .sum();
            List<Lot> made = kettles.make(day, recipe, fullKettles(recipe, grams));
            lots.addAll(made);
            fill(made.stream().filter(lot -> lot.recipe.equals(recipe)).toList(), toMake);
        }
        books.madeOn(day).forEach(this::serve);
        sellAtTheDoor(day);
        ready.removeIf(lot -> lot.left.values().stream().allMatch(packs -> packs == 0));
    }

    /** What keeps is made in full kettles; its rest serves the next days. */
    private long fullKettles(Recipe recipe, long grams) {
        if (grams == 0 || recipe.code().equals(NOT_DAILY) || !keeps(recipe)) return grams;
        double kettle = recipe.kettle().most().inGrams()
                * recipe.yield().mean().asDecimal().doubleValue()
                * recipe.yield().trim().rest().asDecimal().doubleValue();
        return Math.round(Math.ceil(grams / kettle) * kettle / 1.03);
    }

    private Map<Product, Integer> toMake(LocalDate day, Recipe recipe) {
        Map<Product, Integer> toMake =
                new TreeMap<>(Comparator.comparing(Product::net).reversed().thenComparing(Product::code));
        for (Product product : shop.products()) {
            if (!product.recipe().equals(recipe.code())) continue;
            int packs = daysServed(day, recipe).stream()
                    .flatMap(served -> books.madeOn(served).stream())
                    .filter(line -> line.key().product().equals(product.code()))
                    .mapToInt(Wanted::packs)
                    .sum();
            int lying = ready.stream().mapToInt(lot -> lot.left(product.code())).sum();
            if (packs > lying) toMake.put(product, packs - lying);
        }
        return toMake;
    }

    private List<LocalDate> daysServed(LocalDate day, Recipe recipe) {
        if (!recipe.code().equals(NOT_DAILY)) return List.of(day);
        if (!ITS_DAYS.contains(day.getDayOfWeek())) return List.of();
        List<LocalDate> served = new ArrayList<>(List.of(day));
        LocalDate next = shop.calendar().next(day);
        for (; !ITS_DAYS.contains(next.getDayOfWeek()); next = shop.calendar().next(next)) served.add(next);
        return served;
    }

    private void fill(List<Lot> made, Map<Product, Integer> toMake) {
        for (Lot lot : made) toMake.replaceAll((product, packs) -> packs - lot.fill(product, packs));
        for (Lot lot : made) spare(lot.recipe).forEach(product -> lot.fill(product, Integer.MAX_VALUE));
        ready.addAll(made);
    }

    /** What the rest of a kettle is filled into: what people who walk in like best, then the smallest. */
    private List<Product> spare(Recipe recipe) {
        Comparator<Product> byPar = Comparator.comparing(Product::par).reversed();
        return shop.products().stream()
                .filter(product -> product.recipe().equals(recipe.code()))
                .sorted(byPar.thenComparing(Product::net))
                .toList();
    }

    private void serve(Wanted line) {
        Product product = shop.product(line.key().product());
        int still = line.packs();
        for (Lot lot : ready) {
            if (still == 0) break;
            if (product.keeping().lastDelivery(lot.day).isBefore(line.key().delivery())) continue;
            int packs = lot.take(product.code(), still);
            still -= packs;
            if (packs > 0)
                delivered.add(new Gone(line.key().delivery(), line.key().customer(), product.code(), lot, packs));
        }
        missing += still;
    }

    private void sellAtTheDoor(LocalDate day) {
        for (Lot lot : ready)
            for (String product : List.copyOf(lot.left.keySet()))
                if (!keeps(lot.recipe) || isOld(lot, product, day)) {
                    int packs = lot.take(product, lot.left(product));
                    if (packs > 0) sold.add(new Gone(day, "", product, lot, packs));
                }
    }

    private boolean isOld(Lot lot, String product, LocalDate day) {
        return shop.product(product).keeping().lastDelivery(lot.day).isBefore(day.plusDays(1));
    }

    private boolean keeps(Recipe recipe) {
        return shop.products().stream()
                .filter(product -> product.recipe().equals(recipe.code()))
                .allMatch(product -> product.keeping().shelfLifeDays() >= KEEPS_DAYS);
    }
}
