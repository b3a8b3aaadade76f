package dawnkettle.store;

import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.PackBook;
import dawnkettle.stock.Recorded;
import dawnkettle.stock.Web.Handed;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** How the packs of a lot stand: filled, loaded and recorded, played in the order in which it happened. */
final class PackStates {
    private final Vans vans;
    private final RecordedLots records;
    private final Map<LotCode, List<Handed>> handed;

    PackStates(Vans vans, RecordedLots records, Map<LotCode, List<Handed>> handed) {
        this.vans = vans;
        this.records = records;
        this.handed = handed;
    }

    /** The states by product, and from when on there were packs. */
    record Packed(Instant at, Map<String, PackBook.State> states) {}

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
        if (one.gone()) book.loaded(vans.left(one.route(), one.day()), one.packs());
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
        if (one.fact() instanceof Fact.Returned f && f.what() == Fact.Returned.What.SHORT)
            book(books, f.product()).missing(at, f.count());
    }
}
