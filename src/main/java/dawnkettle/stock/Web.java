package dawnkettle.stock;

import dawnkettle.measure.Mass;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;

/** What was made of what, and who got it: one step up and one down from every lot, followed as far as they lead. */
public final class Web {
    private final Map<LotCode, Batch> batches = new TreeMap<>();
    private final Map<LotCode, List<Source>> sources;
    private final Map<String, List<Source>> uses;
    private final Map<LotCode, List<Feed>> parents;
    private final Map<LotCode, List<Feed>> children;
    private final Map<LotCode, List<Handed>> handed;

    public Web(
            Collection<Batch> batches, Collection<Source> sources, Collection<Feed> feeds, Collection<Handed> handed) {
        batches.forEach(batch -> this.batches.put(batch.lot(), batch));
        this.sources = by(sources, Source::batch);
        this.uses = by(sources, Source::lot);
        this.parents = by(feeds, Feed::into);
        this.children = by(feeds, Feed::from);
        this.handed = by(handed, Handed::lot);
    }

    /**
     * A batch and what it gave.
     *
     * @param gave as weighed, or as planned where nobody weighed it; before trimming
     * @param packs by product
     */
    public record Batch(
            LotCode lot, String recipe, Instant packedAt, Gave gave, Map<String, PackBook.State> packs, String held) {
        public Batch {
            packs = new TreeMap<>(packs);
        }

        public boolean isHeld() {
            return !held.isEmpty();
        }
    }

    /** @param wasted thrown away before packing, as written down */
    public record Gave(Mass product, boolean weighed, Mass wasted) {}

    /**
     * A bought lot that went into a batch.
     *
     * @param amount empty where the books do not say how much
     */
    public record Source(String lot, String material, Optional<Quantity> amount, LotCode batch) {}

    /** What one batch gave another. */
    public record Feed(LotCode from, LotCode into, Mass mass) {}

    /**
     * Packs of a lot for a line of an order.
     *
     * @param gone whether the van has left, or the packs were handed over
     */
    public record Handed(
            String order,
            int line,
            String customer,
            String route,
            LocalDate day,
            LotCode lot,
            String product,
            int packs,
            boolean gone) {}

    private static <K, V> Map<K, List<V>> by(Collection<V> all, Function<V, K> key) {
        Map<K, List<V>> map = new HashMap<>();
        all.forEach(one ->
                map.computeIfAbsent(key.apply(one), any -> new ArrayList<>()).add(one));
        return map;
    }

    public Optional<Batch> find(LotCode lot) {
        return Optional.ofNullable(batches.get(lot));
    }

    public Collection<Batch> batches() {
        return batches.values();
    }

    /** Every bought lot that went into any batch. */
    public Set<String> boughtLots() {
        return uses.keySet();
    }

    /** The batches that a bought lot went into, and all that was made from those. */
    public Set<LotCode> madeWith(String boughtLot) {
        return downstream(uses.getOrDefault(boughtLot, List.of()).stream()
                .map(Source::batch)
                .toList());
    }

    /** Some batches and all that was made from them. */
    public Set<LotCode> downstream(Collection<LotCode> from) {
        return closure(
                from,
                lot -> children.getOrDefault(lot, List.of()).stream()
                        .map(Feed::into)
                        .toList());
    }

    /** Some batches and all that they were made from. */
    public Set<LotCode> upstream(Collection<LotCode> from) {
        return closure(
                from,
                lot -> parents.getOrDefault(lot, List.of()).stream()
                        .map(Feed::from)
                        .toList());
    }

    private static Set<LotCode> closure(Collection<LotCode> from, Function<LotCode, List<LotCode>> next) {
        Set<LotCode> seen = new LinkedHashSet<>();
        Deque<LotCode> open = new ArrayDeque<>(from);
        while (!open.isEmpty()) {
            LotCode lot = open.remove();
            if (seen.add(lot)) open.addAll(next.apply(lot));
        }
        return seen;
    }

    public List<Source> sourcesOf(LotCode lot) {
        return sources.getOrDefault(lot, List.of());
    }

    public List<Source> usesOf(String boughtLot) {
        return uses.getOrDefault(boughtLot, List.of());
    }

    public List<Feed> parentsOf(LotCode lot) {
        return parents.getOrDefault(lot, List.of());
    }

    public List<Feed> childrenOf(LotCode lot) {
        return children.getOrDefault(lot, List.of());
    }

    public List<Handed> handedOf(LotCode lot) {
        return handed.getOrDefault(lot, List.of());
    }

    /** What a customer got or gets on a day. */
    public List<Handed> handedTo(String customer, LocalDate day) {
        return handed.values().stream()
                .flatMap(List::stream)
                .filter(one -> one.customer().equals(customer) && one.day().equals(day))
                .toList();
    }
}
