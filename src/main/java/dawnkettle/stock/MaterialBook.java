package dawnkettle.stock;

import dawnkettle.shop.Material;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What came in of each bought lot and where it went, played from the first day on: what came in less all that was taken
 * and lost, with what a count changed, is what is left, to the milligram.
 *
 * <p>Where more is taken than a lot held, the books were wrong: the difference is written in as unexplained.
 */
public final class MaterialBook {
    /** First expired, first out; without a date, first in, first out. */
    public static final Comparator<Holding> FIRST_OUT = Comparator.comparing(
                    (Holding lot) -> lot.bestBefore().orElse(LocalDate.MAX))
            .thenComparing(Holding::receivedOn)
            .thenComparing(Holding::lot);

    private final Map<String, Holding> lots = new LinkedHashMap<>();
    private final Map<String, List<String>> byMaterial = new HashMap<>();
    private final List<Change> changes = new ArrayList<>();
    private final List<Move> moves = new ArrayList<>();

    /** Why a lot became more or less. */
    public enum Cause {
        CAME,
        SOAKED,
        DOSED,
        ADDED,
        PACKED,
        USED,
        LOST,
        COUNTED,
        UNEXPLAINED
    }

    /**
     * A lot became more or less.
     *
     * @param into the tub with its day, the batch's lot, or the reason
     * @param change in the smallest of its unit, below zero for what was taken
     */
    public record Move(Instant at, String lot, Cause cause, String into, long change) {}

    /** What is left of a lot. */
    public record Holding(
            String lot,
            String material,
            Material.Unit unit,
            LocalDate receivedOn,
            Optional<LocalDate> bestBefore,
            long left) {
        Holding with(long other) {
            return new Holding(lot, material, unit, receivedOn, bestBefore, other);
        }
    }

    /** Where something is taken to. */
    public record Use(Instant at, Cause cause, String into, long amount) {}

    private record Change(Instant at, Runnable applied) {}

    public void came(Instant at, LocalDate day, Fact.Received came) {
        Quantity amount = came.quantity();
        if (!lots.containsKey(came.lot()))
            byMaterial
                    .computeIfAbsent(came.material(), any -> new ArrayList<>())
                    .add(came.lot());
        lots.putIfAbsent(
                came.lot(), new Holding(came.lot(), came.material(), amount.unit(), day, came.bestBefore(), 0));
        changes.add(new Change(at, () -> move(at, came.lot(), Cause.CAME, "", amount.smallest())));
    }

    /** Something is taken from some lots, the first until it is empty. */
    public void take(List<String> codes, Use use) {
        changes.add(new Change(use.at, () -> taken(codes, use)));
    }

    /** Something is taken of a material: of the lots named, then of those that must go first. */
    public void takeOf(String material, List<String> named, Use use) {
        changes.add(new Change(use.at, () -> taken(codesOf(material, named), use)));
    }

    public void counted(Instant at, String lot, long left, String why) {
        changes.add(new Change(at, () -> {
            Holding known = lots.get(lot);
            if (known != null && known.left != left) move(at, lot, Cause.COUNTED, why, left - known.left);
        }));
    }

    /** Plays everything in the order in which it happened; what happened at once, in the order in which it was told. */
    public MaterialBook played() {
        changes.stream()
                .sorted(Comparator.comparing(Change::at))
                .forEach(change -> change.applied().run());
        changes.clear();
        return this;
    }

    public List<Move> moves() {
        return List.copyOf(moves);
    }

    /** All lots, what must go first before the others. */
    public List<Holding> holdings() {
        return lots.values().stream().sorted(FIRST_OUT).toList();
    }

    public Optional<Holding> find(String lot) {
        return lots.values().stream()
                .filter(one -> one.lot().equalsIgnoreCase(lot))
                .findFirst();
    }

    private List<String> codesOf(String material, List<String> named) {
        List<Holding> ofMaterial = byMaterial.getOrDefault(material, List.of()).stream()
                .map(lots::get)
                .sorted(Comparator.comparing((Holding lot) -> !named.contains(lot.lot))
                        .thenComparing(lot -> lot.left == 0)
                        .thenComparing(FIRST_OUT))
                .toList();
        return ofMaterial.stream().map(Holding::lot).toList();
    }

    private void taken(List<String> codes, Use use) {
        long still = use.amount;
        for (String code : codes) {
            long some = Math.min(still, left(code));
            if (some > 0) move(use.at, code, use.cause, use.into, -some);
            still -= some;
        }
        if (still > 0 && !codes.isEmpty()) overdraw(codes, use, still);
    }

    /** Of the last lot that came in before; of the last named where none did. */
    private void overdraw(List<String> codes, Use use, long still) {
        String last = codes.stream()
                .filter(lots::containsKey)
                .reduce((one, other) -> other)
                .orElse("");
        if (last.isEmpty()) return;
        move(use.at, last, Cause.UNEXPLAINED, "more was taken than the books held", still);
        move(use.at, last, use.cause, use.into, -still);
    }

    private long left(String code) {
        return lots.containsKey(code) ? lots.get(code).left : 0;
    }

    private void move(Instant at, String lot, Cause cause, String into, long change) {
        lots.computeIfPresent(lot, (code, holding) -> holding.with(Math.addExact(holding.left, change)));
        moves.add(new Move(at, lot, cause, into, change));
    }
}
