package dawnkettle.store;

import dawnkettle.measure.Mass;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The records that stand of each batch's lot, in the order in which they happened. */
final class RecordedLots {
    private final Map<LotCode, List<Recorded>> byLot = new HashMap<>();
    private final List<Recorded> delivered = new ArrayList<>();

    RecordedLots(Sql sql) {
        for (Recorded one : new RecordRows(sql)
                .all(
                        Fact.Kind.YIELDED,
                        Fact.Kind.PACKED,
                        Fact.Kind.COUNTED,
                        Fact.Kind.SOLD,
                        Fact.Kind.LOST,
                        Fact.Kind.WASTED,
                        Fact.Kind.DELIVERED,
                        Fact.Kind.RETURNED,
                        Fact.Kind.DESTROYED)) {
            if (one.fact() instanceof Fact.Delivered) delivered.add(one);
            lot(one.fact())
                    .ifPresent(lot ->
                            byLot.computeIfAbsent(lot, any -> new ArrayList<>()).add(one));
        }
    }

    private static Optional<LotCode> lot(Fact fact) {
        if (fact instanceof Fact.Yielded f) return Optional.of(f.lot());
        if (fact instanceof Fact.Packed f) return Optional.of(f.lot());
        if (fact instanceof Fact.CountedPacks f) return Optional.of(f.lot());
        if (fact instanceof Fact.Sold f) return Optional.of(f.lot());
        if (fact instanceof Fact.LostBatch f) return Optional.of(f.lot());
        if (fact instanceof Fact.LostPacks f) return Optional.of(f.lot());
        if (fact instanceof Fact.Wasted f) return Optional.of(f.lot());
        if (fact instanceof Fact.Delivered f) return Optional.of(f.lot());
        if (fact instanceof Fact.Destroyed f) return Optional.of(f.lot());
        return fact instanceof Fact.Returned f ? f.lot() : Optional.empty();
    }

    Set<LotCode> lots() {
        return new TreeSet<>(byLot.keySet());
    }

    List<Recorded> of(LotCode lot) {
        return byLot.getOrDefault(lot, List.of());
    }

    List<Recorded> delivered() {
        return delivered;
    }

    /** The last yield counts. */
    Optional<Fact.Yielded> yielded(LotCode lot) {
        return of(lot).stream()
                .map(Recorded::fact)
                .filter(Fact.Yielded.class::isInstance)
                .map(Fact.Yielded.class::cast)
                .reduce((one, later) -> later);
    }

    Mass wasted(LotCode lot) {
        return Mass.sum(of(lot).stream()
                .map(Recorded::fact)
                .filter(Fact.Wasted.class::isInstance)
                .map(fact -> ((Fact.Wasted) fact).mass())
                .toList());
    }

    /** When the whole lot was lost. */
    Optional<Instant> lostAt(LotCode lot) {
        return of(lot).stream()
                .filter(one -> one.fact() instanceof Fact.LostBatch)
                .map(Recorded::happenedAt)
                .findFirst();
    }
}
