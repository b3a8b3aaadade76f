package dawnkettle.stock;

import dawnkettle.measure.Mass;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The lots that a record may name: what was bought, and what the days it speaks of made. */
public record KnownLots(List<Bought> bought, List<Made> made) {
    public KnownLots {
        bought = List.copyOf(bought);
        made = List.copyOf(made);
    }

    /**
     * A supplier's lot of one material.
     *
     * @param received all that came in of it
     */
    public record Bought(String lot, String material, Quantity received) {}

    /**
     * A batch's lot.
     *
     * @param packs by product
     * @param lost whether the whole of it was recorded as lost
     */
    public record Made(LotCode lot, Making making, Map<String, Packs> packs, boolean lost) {
        public Made {
            packs = Map.copyOf(packs);
        }
    }

    /**
     * How a batch is made.
     *
     * @param input dry beans, or the mass of what it is made from
     * @param expected what it should give, before trimming
     */
    public record Making(String recipe, Instant startsAt, Mass input, Mass expected) {}

    /**
     * Packs of a product of a lot.
     *
     * @param filled as planned, or more where more were counted
     * @param gone those of them that were recorded as sold or lost
     */
    public record Packs(int filled, int gone) {
        int left() {
            return Math.max(0, filled - gone);
        }
    }

    /** A supplier's lot, in capitals or not. */
    public Optional<Bought> findBought(String lot) {
        return bought.stream().filter(one -> one.lot().equalsIgnoreCase(lot)).findFirst();
    }

    public Optional<Made> findMade(LotCode lot) {
        return made.stream().filter(one -> one.lot().equals(lot)).findFirst();
    }
}
