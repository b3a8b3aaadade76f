package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One batch: what goes in, what it becomes. Packs, trim and what it feeds add up to {@code expected} to the milligram.
 *
 * @param id as "B07", in the order of the first operation
 * @param beans dry beans; zero for a batch made from others
 * @param water grinding water
 * @param coagulant what sets it; empty where nothing does
 * @param expected mass of product expected, before trimming
 * @param trim what is cut off and what is too little for another pack
 * @param packDate local date on which its packing begins
 * @param feeds batches made from it
 */
public record PlannedBatch(
        String id,
        LotCode lot,
        String recipe,
        Mass beans,
        Mass water,
        Optional<Dose> coagulant,
        Mass expected,
        List<FromTub> soaks,
        List<String> materialLots,
        List<Filled> packs,
        Mass trim,
        LocalDate packDate,
        List<Feed> feeds) {
    public PlannedBatch {
        soaks = List.copyOf(soaks);
        materialLots = List.copyOf(materialLots);
        packs = List.copyOf(packs);
        feeds = List.copyOf(feeds);
    }

    /** A weighed material. */
    public record Dose(String material, Mass mass) {}

    /** Dry beans that come from a tub. */
    public record FromTub(String tub, Mass beans) {}

    /**
     * Packs of a product filled from a batch.
     *
     * @param cases whole cases made up
     * @param loosePacks packs that stand in part cases
     */
    public record Filled(String product, int packs, int cases, int loosePacks) {}

    /** Product of this batch that goes into another. */
    public record Feed(String batch, Mass mass) {}
}
