package dawnkettle.cost;

import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What one day made and took, as far as it costs money: from a plan, or from what the ledger remembers.
 *
 * @param made by product, each once
 * @param beans what the beans of the day cost
 * @param water for soaking and grinding
 * @param routes vans that went out
 */
public record MadeDay(LocalDate date, List<Made> made, UnitPrice beans, Mass water, int routes) {
    public MadeDay {
        made = List.copyOf(made);
    }

    /**
     * One product of the day.
     *
     * @param mass net mass of the packs
     * @param beans dry beans that went into them, through whatever they were made from
     * @param handSeconds seconds of work that one person would take for it
     * @param used coagulant, oil, flavour, packaging
     */
    public record Made(String product, long packs, Mass mass, Mass beans, long handSeconds, List<Used> used) {
        public Made {
            used = List.copyOf(used);
        }
    }

    /** So much of a material, in its own unit: kilograms, litres or pieces. */
    public record Used(String material, BigDecimal units) {}

    /**
     * The day as planned.
     *
     * @param lots what each lot of beans cost, as far as it is known; the standard price stands in for the others
     */
    public static MadeDay of(DayPlan plan, Shop shop, Map<String, UnitPrice> lots) {
        Stream<Mass> soaking = plan.soaks().stream().map(PlannedSoak::water);
        Stream<Mass> grinding = plan.batches().stream().map(PlannedBatch::water);
        return new MadeDay(
                plan.heading().productionDate(),
                new DayTrace(plan, shop).made(),
                new BeanPrices(shop, lots).of(plan.soaks()),
                Mass.sum(Stream.concat(soaking, grinding).toList()),
                plan.routes().size());
    }
}
