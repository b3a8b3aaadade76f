package dawnkettle.store;

import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.PackBook;
import dawnkettle.stock.Recorded;
import dawnkettle.stock.Web.Handed;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** How the packs of a lot stand: filled, loaded and recorded, played in the order in which it happened. */
final class PackStates {
    private final Shop shop;
    private final RecordedLots records;
    private final Map<LotCode, List<Handed>> handed;

    PackStates(Shop shop, RecordedLots records, Map<LotCode, List<Handed>> handed) {
        this.shop = shop;
        this.records = records;
        this.handed = handed;
    }

    /** The states by product, and from when on there were packs. */
    record Packed(Instant at, Map<String, PackBook.State> states) {}

    /** When a route's van leaves on a day; by a route that is no more, at noon. */
    static Instant departs(Shop shop, String route, LocalDate day) {
        LocalTime time = shop.routes().stream()
                .filter(one -> one.code().equals(route))
                .map(Route::departs)
                .findFirst()
                .orElse(LocalTime.NOON);
        return day.atTime(time).atZone(shop.house().zone()).toInstant();
    }

    /** @param planned packs that the plan fills, by product */
    Packed of(LotCode lot, Instant packedAt, Map<String, Integer> planned) {
        Map<String, Integer> filled = new TreeMap<>(planned);
        Map<String, PackBook> books = new TreeMap<>();
        for (Recorded one : records.of(lot))
            if (one.fact() instanceof Fact.Packed packed) filled.put(packed.product(), packed.packs());
        filled.forEach((product, packs) -> book(books, product).filled(packedAt, packs));
        handed.getOrDefault(lot, List.of()).forEach(one -> give(book(books, one.product()), one));
        for (Recorded one : records.of(lot)) if (!(one.fact() instanceof Fact.LostBatch)) play(books, one);
        for (Recorded one : records.of(lot))
            if (one.fact() instanceof Fact.LostBatch) books.values().forEach(book -> book.wholeLost(one.happenedAt()));
        Map<String, PackBook.State> states = new TreeMap<>();
        books.forEach((product, book) -> states.put(product, book.played()));
        return new Packed(packedAt, states);
    }

    private static PackBook book(Map<String, PackBook> books, String product) {
        return books.computeIfAbsent(product, any -> new PackBook());
    }

    private void give(PackBook book, Handed one) {
        if (one.gone()) book.loaded(departs(shop, one.route(), one.day()), one.packs());
        else book.allocated(one.packs());
    }

    private static void play(Map<String, PackBook> books, Recorded one) {
        Instant at = one.happenedAt();
        if (one.fact() instanceof Fact.Sold f) book(books, f.product()).sold(at, f.packs());
        if (one.fact() instanceof Fact.LostPacks f) book(books, f.product()).lost(at, f.packs());
        if (one.fact() instanceof Fact.Destroyed f) book(books, f.product()).destroyed(at, f.packs());
        if (one.fact() instanceof Fact.CountedPacks f) book(books, f.product()).counted(at, f.packs(), f.why());
        if (one.fact() instanceof Fact.Returned f && f.what() == Fact.Returned.What.GOODS)
            book(books, f.product()).returned(at, f.count());
    }
}
