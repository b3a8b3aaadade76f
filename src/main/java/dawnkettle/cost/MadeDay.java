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
import java.util.Optional;
import java.util.OptionalLong;
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
    public record Made(
            String product, long packs, Mass mass, Mass beans, long handSeconds, List<Used> used, Bill bill) {
        public Made {
            used = List.copyOf(used);
        }

        /** Of which no more is known. */
        public Made(String product, long packs, Mass mass, Mass beans, long handSeconds, List<Used> used) {
            this(product, packs, mass, beans, handSeconds, used, Bill.UNKNOWN);
        }
    }

    /**
     * What is known of a product's beans and heat by its own recipe; else the day's beans and the usual heat count.
     *
     * @param beans what its beans cost, in minor units and parts of them
     * @param kilojoules its heat
     */
    public record Bill(Optional<BigDecimal> beans, OptionalLong kilojoules) {
        static final Bill UNKNOWN = new Bill(Optional.empty(), OptionalLong.empty());
    }

    /**
     * So much of a material, in its own unit: kilograms, litres or pieces.
     *
     * @param minor what it cost by the lots it came from, in minor units and parts of them; empty for the standard price
     */
    public record Used(String material, BigDecimal units, Optional<BigDecimal> minor) {
        public Used(String material, BigDecimal units) {
            this(material, units, Optional.empty());
        }
    }

    /**
     * The day as planned.
     *
     * @param lots what each lot of beans cost, as far as it is known; the standard price stands in for the others
     */
    public static MadeDay of(DayPlan plan, Shop shop, Map<String, UnitPrice> lots) {
        Stream<Mass> soaking = plan.soaks().stream().map(PlannedSoak::water);
        Stream<Mass> grinding = plan.batches().stream().map(PlannedBatch::water);
        BeanPrices prices = new BeanPrices(shop, lots).add(plan.soaks());
        return new MadeDay(
                plan.heading().productionDate(),
                new DayTrace(plan, shop, prices).made(),
                prices.all(),
                Mass.sum(Stream.concat(soaking, grinding).toList()),
                plan.routes().size());
    }
}
