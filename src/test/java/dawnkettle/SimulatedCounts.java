package dawnkettle;

import dawnkettle.plan.Allocation;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.StockLot;
import dawnkettle.store.Ledger;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.BiConsumer;

/** Counts of a year that differ from the books by what is kept here: of bought lots now and then, of packs more often. */
final class SimulatedCounts {
    private static final int DAYS_BETWEEN = 10;

    /** What counts changed of each bought lot, in the smallest of its unit. */
    final Map<String, Long> ofBought = new TreeMap<>();
    /** What counts changed of each lot's product, in packs. */
    final Map<String, Integer> ofPacks = new TreeMap<>();

    private final Shop shop;
    private final Ledger ledger;
    private final Random chance;
    private final List<Allocation> promised = new ArrayList<>();
    private int day;

    SimulatedCounts(Shop shop, Ledger ledger, long seed) {
        this.shop = shop;
        this.ledger = ledger;
        this.chance = new Random(seed);
    }

    void promised(List<Allocation> more) {
        promised.addAll(more);
    }

    /** Bought lots, once the day is made and before the next is planned, about one of four; a little less is found, or more. */
    void bought(LocalDate productionDate, Instant at, BiConsumer<Fact, Instant> told) {
        if (day++ % DAYS_BETWEEN != DAYS_BETWEEN / 2) return;
        for (MaterialBook.Holding lot :
                ledger.stock().materials(shop, productionDate, at).holdings()) {
            if (lot.left() < 1_000 || chance.nextInt(4) > 0) continue;
            long change = chance.nextInt(5) == 0 ? 0 : chance.nextInt(500) - 400;
            Quantity left = new Quantity(lot.left() + change, lot.unit());
            told.accept(new Fact.CountedMaterial(lot.material(), lot.lot(), left, "counted at noon"), at);
            if (change != 0) ofBought.merge(lot.lot(), change, Long::sum);
        }
    }

    /** Packs of a lot that are here once the day's vans are gone, promised ones with them; sometimes one is missing. */
    void packs(LocalDate date, StockLot lot, Instant at, BiConsumer<Fact, Instant> told) {
        int here = lot.packs()
                + promised.stream()
                        .filter(one -> one.lot().equals(lot.lot())
                                && one.product().equals(lot.product())
                                && one.deliveryDate().isAfter(date))
                        .mapToInt(Allocation::packs)
                        .sum();
        int change = chance.nextInt(2) - 1;
        told.accept(
                new Fact.CountedPacks(lot.lot(), lot.product(), here + change, java.util.Optional.empty(), "count"),
                at);
        if (change != 0) ofPacks.merge(lot.lot() + " " + lot.product(), change, Integer::sum);
    }
}
