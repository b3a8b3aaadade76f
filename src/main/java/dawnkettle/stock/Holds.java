package dawnkettle.stock;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Which lots leave nothing: each from when its hold was written down until a named person released it.
 *
 * <p>It counts when it was written, not when it happened: a hold that came too late kept no van.
 */
public final class Holds {
    public static final Holds NONE = new Holds(List.of());

    private final Map<LotCode, List<Recorded>> said = new TreeMap<>();

    /** @param recorded holds and releases in the order in which they were written down; others are left out */
    public Holds(List<Recorded> recorded) {
        for (Recorded one : recorded)
            lot(one.fact())
                    .ifPresent(lot ->
                            said.computeIfAbsent(lot, any -> new ArrayList<>()).add(one));
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
