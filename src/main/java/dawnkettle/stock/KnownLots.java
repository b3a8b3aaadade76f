package dawnkettle.stock;

import dawnkettle.measure.Mass;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The lots that a record may name: what was bought, and what the days it speaks of made. */
public record KnownLots(List<Bought> bought, List<Made> made, Past past) {
    public KnownLots {
        bought = List.copyOf(bought);
        made = List.copyOf(made);
    }

    public KnownLots(List<Bought> bought, List<Made> made) {
        this(bought, made, Past.NONE);
    }

    /**
     * What was written down before, as far as a record may take it back or go on from it.
     *
     * @param tubs filled lately, the last first
     * @param holds which lots are held
     * @param losses the number of the record that wrote a lot off
     * @param down stations that were said to be down lately, the last record last
     * @param numbered the record that is named by its number, and whether it still counts
     */
    public record Past(
            List<FilledTub> tubs,
            Holds holds,
            Map<LotCode, Long> losses,
            List<Fact.Down> down,
            Optional<Numbered> numbered) {
        public static final Past NONE = new Past(List.of(), Holds.NONE, Map.of(), List.of(), Optional.empty());

        public Past {
            tubs = List.copyOf(tubs);
            down = List.copyOf(down);
            losses = Map.copyOf(losses);
        }
    }

    /** A tub that was filled for a production day. */
    public record FilledTub(String tub, LocalDate productionDate, Instant filledAt) {}

    /** A record by its number. */
    public record Numbered(long number, Recorded recorded, boolean counts) {}

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
