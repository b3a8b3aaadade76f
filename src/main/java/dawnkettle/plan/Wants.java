package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import dawnkettle.shop.Step;
import dawnkettle.stock.StockLot;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What is wanted of a day: the book's lines and the allowances, less what no van carries and what lies in stock. */
final class Wants {
    private final Shop shop;
    private final Evening evening;
    private final DayClock clock;
    final List<OpenLine> lines = new ArrayList<>();
    final Map<String, Van> vans = new TreeMap<>();
    private final Map<StockLot, Integer> left = new HashMap<>();

    Wants(Shop shop, Evening evening, DayClock clock) {
        this.shop = shop;
        this.evening = evening;
        this.clock = clock;
        for (BookLine line : evening.book().lines()) if (line.packs() > 0) lines.add(open(line));
        evening.outlook().allowances().stream()
                .filter(allowance -> allowance.packs() > 0)
                .forEach(allowance -> lines.add(
                        new OpenLine(shop.product(allowance.product()), allowance.deliveryDate(), allowance.packs())));
        refuseWhatCoolsTooSlowly();
        loadVans();
        evening.larder().stock().forEach(lot -> left.put(lot, lot.packs()));
        lines.forEach(this::giveStockAsBefore);
        lines.stream()
                .filter(line -> !isGone(line))
                .sorted(Comparator.comparing((OpenLine line) -> line.priority))
                .forEach(this::giveStock);
        wantPar();
    }

    private OpenLine open(BookLine line) {
        Van van = vans.computeIfAbsent(
                Van.due(line.route(), line.deliveryDate()),
                due -> Van.of(shop.route(line.route()), line.deliveryDate(), clock));
        int priority = shop.customer(line.customer()).priority();
        return new OpenLine(line, shop.product(line.product()), priority, van.due(), van.packByMinute());
    }

    /** Whether the line's van has left: it carries what it left with. */
    private boolean isGone(OpenLine line) {
        return evening.committed().has(Heading.Frozen.Kind.ROUTE_GONE, line.due);
    }

    private void refuseWhatCoolsTooSlowly() {
        for (OpenLine line : lines) coolsTooSlowly(shop, line.product).ifPresent(line::refuse);
    }

    /** Why a product may not be made: its block would break the published cooling limit. */
    static Optional<String> coolsTooSlowly(Shop shop, Product product) {
        Optional<Step> bath = bath(shop.recipeOf(product));
        if (bath.isEmpty() || product.packing().block().isEmpty()) return Optional.empty();
        double water = bath.get().target().orElseThrow().degrees();
        var block = product.packing().block().get();
        if (Cooling.meetsTwoSteps(block, water)) return Optional.empty();
        return Optional.of(String.format(
                Locale.ROOT,
                "a block of %s mm is not cold in time (57 to 21 °C in 2 h, to 5 °C in 6 h); cut it to %d mm high or less",
                block,
                Cooling.largestHeight(block, water)));
    }

    /** The first step in which a product is cooled: one with a target of 5 °C or less. */
    static Optional<Step> bath(Recipe recipe) {
        return recipe.steps().stream()
                .filter(step -> step.target()
                        .filter(target -> target.degrees() < Cooling.COLD)
                        .isPresent())
                .findFirst();
    }

    /** Declines, lowest priority first, what a van has no room for. */
    private void loadVans() {
        Map<String, Integer> loaded = new HashMap<>();
        lines.stream()
                .filter(line -> !line.due.isEmpty() && !isGone(line))
                .sorted(Comparator.comparingInt((OpenLine line) -> line.priority)
                        .thenComparing(line -> line.line.orElseThrow().order()))
                .forEach(line -> {
                    Van van = vans.get(line.due);
                    int space = van.route().cases() - loaded.getOrDefault(line.due, 0);
                    int packsInCase = line.product.packsInCase();
                    int fits = Math.min(line.open(), space * packsInCase);
                    if (fits < line.open())
                        line.refuse(
                                line.open() - fits,
                                "van " + van.route().code() + " holds no more than "
                                        + van.route().cases() + " cases");
                    loaded.merge(line.due, (fits + packsInCase - 1) / packsInCase, Integer::sum);
                });
    }

    /** In a revision a line keeps the lots from stock that the plan before gave it. */
    private void giveStockAsBefore(OpenLine line) {
        for (Allocation one :
                evening.committed().before().map(DayPlan::allocation).orElse(List.of())) {
            if (!one.fromStock() || !line.isFor(one)) continue;
            left.keySet().stream()
                    .filter(lot -> lot.lot().equals(one.lot()) && lot.product().equals(one.product()))
                    .findFirst()
                    .ifPresent(lot -> give(line, lot, Math.min(one.packs(), left.get(lot))));
        }
    }

    private void give(OpenLine line, StockLot lot, int most) {
        int packs = Math.min(line.open(), most);
        if (packs == 0) return;
        line.gifts.add(new OpenLine.Gift(Optional.of(lot), Optional.empty(), packs));
        left.merge(lot, -packs, Integer::sum);
    }

    /** First expired, first out, as long as enough days are left on the day of delivery; from one lot where one serves. */
    private void giveStock(OpenLine line) {
        List<StockLot> lots = left.keySet().stream()
                .filter(lot -> lot.product().equals(line.product.code()) && left.get(lot) > 0)
                .filter(lot -> !lot.bestBefore()
                        .minusDays(line.product.keeping().leastDaysLeft())
                        .isBefore(line.deliveryDate))
                .sorted(Comparator.comparing(StockLot::bestBefore).thenComparing(StockLot::lot))
                .toList();
        for (StockLot lot : lots) give(line, lot, left.get(lot));
    }

    /** Packs that should lie ready for people who walk in, as far as stock does not hold them. */
    private void wantPar() {
        LocalDate day = clock.day();
        for (Product product : shop.products()) {
            int lying = left.entrySet().stream()
                    .filter(lot -> lot.getKey().product().equals(product.code()))
                    .mapToInt(Map.Entry::getValue)
                    .sum();
            if (product.par() > lying && coolsTooSlowly(shop, product).isEmpty())
                lines.add(new OpenLine(product, day, product.par() - lying));
        }
    }

    /** Mass of a recipe's products that the making days after this one already want and that would keep till then. */
    dawnkettle.measure.Mass likely(Recipe recipe) {
        LocalDate packDate = clock.day();
        return dawnkettle.measure.Mass.sum(evening.outlook().ahead().stream()
                .filter(line -> shop.product(line.product()).recipe().equals(recipe.code()))
                .filter(line -> !shop.product(line.product())
                        .keeping()
                        .lastDelivery(packDate)
                        .isBefore(line.deliveryDate()))
                .map(line -> shop.product(line.product()).net().times(line.packs()))
                .toList());
    }

    List<OpenLine> of(Recipe recipe) {
        return lines.stream()
                .filter(line -> line.product.recipe().equals(recipe.code()) && line.open() > 0)
                .toList();
    }

    void reopen() {
        lines.forEach(OpenLine::reopen);
    }
}
