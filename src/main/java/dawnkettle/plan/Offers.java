package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.plan.Differences.ShortLine;
import dawnkettle.plan.IfCard.StandIn;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What lies free for those who are short: packs of stock and of batches that are promised to nobody, ready before the van. */
final class Offers {
    /** The nearest so many for a product: a card is read in a hurry. */
    private static final int MOST = 3;

    /** The least {@link #distance} at which nobody would take the one for the other. */
    private static final int FAR = 3;

    private final Shop shop;
    private final DayPlan plan;
    private final List<Free> free = new ArrayList<>();

    Offers(Shop shop, DayPlan plan) {
        this.shop = shop;
        this.plan = plan;
        for (StockLot lot : plan.stock())
            add(new Free(lot.product(), lot.packs(), lot.lot(), "", Instant.MIN, lot.bestBefore()));
        for (PlannedBatch batch : plan.batches()) batch.packs().forEach(filled -> add(free(batch, filled)));
    }

    private record Free(String product, int packs, LotCode lot, String batch, Instant ready, LocalDate bestBefore) {}

    private Free free(PlannedBatch batch, PlannedBatch.Filled filled) {
        Instant ready = plan.operationsOf(batch.id()).stream()
                .map(PlannedOperation::end)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        LocalDate bestBefore = shop.product(filled.product()).keeping().bestBefore(batch.packDate());
        return new Free(filled.product(), filled.packs(), batch.lot(), batch.id(), ready, bestBefore);
    }

    private void add(Free all) {
        int given = plan.allocation().stream()
                .filter(one -> one.lot().equals(all.lot) && one.product().equals(all.product))
                .mapToInt(Allocation::packs)
                .sum();
        if (all.packs > given)
            free.add(new Free(all.product, all.packs - given, all.lot, all.batch, all.ready, all.bestBefore));
    }

    /** For each product that is short, the nearest that could be had; no more of it than is short. */
    List<StandIn> of(List<ShortLine> lines) {
        Map<String, List<ShortLine>> byProduct = new LinkedHashMap<>();
        lines.forEach(line -> byProduct
                .computeIfAbsent(line.line().product(), product -> new ArrayList<>())
                .add(line));
        List<StandIn> offers = new ArrayList<>();
        byProduct.forEach((product, own) -> offers.addAll(offers(shop.product(product), own)));
        return offers;
    }

    private List<StandIn> offers(Product wanted, List<ShortLine> lines) {
        return free.stream()
                .filter(one -> isNear(wanted, one) && lines.stream().anyMatch(line -> serves(one, line.line())))
                .sorted(Comparator.comparingInt((Free one) -> distance(wanted, shop.product(one.product)))
                        .thenComparing(Comparator.comparingInt(Free::packs).reversed())
                        .thenComparing(Free::lot))
                .limit(MOST)
                .map(one -> new StandIn(wanted.code(), one.product, one.packs, one.lot, one.batch))
                .toList();
    }

    private boolean isNear(Product wanted, Free one) {
        return distance(wanted, shop.product(one.product)) < FAR;
    }

    /**
     * 0 the same product, 1 of the same recipe, 2 another in the same kind of pack: nobody takes a bottle for a block; nothing
     * that brings an allergen which was not in it.
     */
    private int distance(Product wanted, Product other) {
        if (other.equals(wanted)) return 0;
        if (!wanted.wording().contains().containsAll(other.wording().contains())) return FAR;
        if (other.recipe().equals(wanted.recipe())) return 1;
        return other.packing().pack() == wanted.packing().pack() ? 2 : FAR;
    }

    /** Cold before the van loads, and with its least days left on the day of delivery. */
    private boolean serves(Free one, BookLine line) {
        boolean keeps = !one.bestBefore
                .minusDays(shop.product(one.product).keeping().leastDaysLeft())
                .isBefore(line.deliveryDate());
        return keeps
                && plan.routes().stream()
                        .anyMatch(van -> van.route().equals(line.route())
                                && isOn(van, line.deliveryDate())
                                && !one.ready.isAfter(van.packBy()));
    }

    private boolean isOn(PlannedRoute van, LocalDate day) {
        return van.departs().atZone(plan.heading().zone()).toLocalDate().equals(day);
    }
}
