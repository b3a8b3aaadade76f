package dawnkettle.stock;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Which lots leave nothing: each from when its hold was written down until a named person released it.
 *
 * <p>A bought lot that is held holds every batch made with it. It counts when it was written, not when it happened: a hold that came too late kept no van.
 */
public final class Holds {
    public static final Holds NONE = new Holds(List.of());

    private final Map<LotCode, List<Recorded>> said = new TreeMap<>();
    private final Map<String, Recorded> bought = new TreeMap<>();
    private final Function<String, Set<LotCode>> madeWith;

    /** @param recorded holds and releases in the order in which they were written down; others are left out */
    public Holds(List<Recorded> recorded) {
        this(recorded, lot -> Set.of());
    }

    /** @param madeWith the batches that a bought lot went into, and all that was made of them: they are held with it */
    public Holds(List<Recorded> recorded, Function<String, Set<LotCode>> madeWith) {
        this.madeWith = madeWith;
        for (Recorded one : recorded) {
            lot(one.fact()).ifPresent(lot -> add(lot, one));
            if (one.fact() instanceof Fact.HeldBought held) hold(held.lot(), one);
            if (one.fact() instanceof Fact.ReleasedBought free) release(free, one);
        }
    }

    private void add(LotCode lot, Recorded one) {
        said.computeIfAbsent(lot, any -> new ArrayList<>()).add(one);
    }

    /** What is held already keeps its own reason, and waits for its own release. */
    private void hold(String lot, Recorded one) {
        bought.put(lot, one);
        for (LotCode batch : madeWith.apply(lot)) if (!isHeld(batch)) add(batch, with(lot, batch, one));
    }

    private static Recorded with(String lot, LotCode batch, Recorded one) {
        String why = because(lot) + ((Fact.HeldBought) one.fact()).why();
        return new Recorded(new Fact.Held(batch, why), one.happenedAt(), one.recordedAt(), one.origin());
    }

    private static String because(String lot) {
        return "made with held lot " + lot + ": ";
    }

    /** Lets go what was held on its account alone; where another held lot is in it too, it stays. */
    private void release(Fact.ReleasedBought free, Recorded one) {
        bought.remove(free.lot());
        for (LotCode batch : madeWith.apply(free.lot())) {
            if (why(batch).filter(why -> why.startsWith(because(free.lot()))).isEmpty()) continue;
            Fact freed = new Fact.Released(batch, free.by(), free.why());
            add(batch, new Recorded(freed, one.happenedAt(), one.recordedAt(), one.origin()));
            bought.forEach((other, held) -> {
                if (madeWith.apply(other).contains(batch) && !isHeld(batch)) add(batch, with(other, batch, held));
            });
        }
    }

    /** Why a bought lot is held; empty where it is not. */
    public Optional<String> why(String boughtLot) {
        return Optional.ofNullable(bought.get(boughtLot)).map(held -> ((Fact.HeldBought) held.fact()).why());
    }

    public boolean isHeld(String boughtLot) {
        return bought.containsKey(boughtLot);
    }

    private static Optional<LotCode> lot(Fact fact) {
        if (fact instanceof Fact.Held held) return Optional.of(held.lot());
        return fact instanceof Fact.Released released ? Optional.of(released.lot()) : Optional.empty();
    }

    /** Why a lot is held; empty where it is not. */
    public Optional<String> why(LotCode lot) {
        return last(said.getOrDefault(lot, List.of()));
    }

    public boolean isHeld(LotCode lot) {
        return why(lot).isPresent();
    }

    /** Whether a lot was held at an instant, as far as anybody knew then. */
    public boolean wasHeld(LotCode lot, Instant at) {
        if (!said.containsKey(lot)) return false;
        return last(said.getOrDefault(lot, List.of()).stream()
                        .filter(one -> !one.recordedAt().isAfter(at))
                        .toList())
                .isPresent();
    }

    /** Whether somebody released a lot at or after an instant. */
    public boolean wasReleasedSince(LotCode lot, Instant since) {
        return said.getOrDefault(lot, List.of()).stream()
                .anyMatch(one ->
                        one.fact() instanceof Fact.Released && !one.recordedAt().isBefore(since));
    }

    public Set<LotCode> held() {
        Set<LotCode> held = new TreeSet<>();
        for (LotCode lot : said.keySet()) if (isHeld(lot)) held.add(lot);
        return held;
    }

    /** Every held lot with its reason. */
    public Map<LotCode, String> reasons() {
        Map<LotCode, String> reasons = new TreeMap<>();
        for (LotCode lot : held()) reasons.put(lot, why(lot).orElseThrow());
        return reasons;
    }

    private static Optional<String> last(List<Recorded> recorded) {
        return recorded.isEmpty() || !(recorded.get(recorded.size() - 1).fact() instanceof Fact.Held held)
                ? Optional.empty()
                : Optional.of(held.why());
    }
}
