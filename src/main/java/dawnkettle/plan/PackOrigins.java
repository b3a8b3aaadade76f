package dawnkettle.plan;

import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.stock.LotCode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Why each pack of a plan is there: for whom it was ordered, what usually comes late, or that kettles are whole. */
public final class PackOrigins {
    private PackOrigins() {}

    /** Why a pack is made or taken from stock. */
    public enum Why {
        /** Somebody ordered it. */
        FIRM,
        /** Somebody has it every week. */
        STANDING,
        /** It usually comes after the close, or should lie ready for people who walk in. */
        ALLOWANCE,
        /** A kettle is whole, and its days allow it. */
        WHOLE_KETTLE
    }

    /** Packs of one lot and one reason. */
    public record Origin(LotCode lot, String product, Why why, boolean fromStock, int packs) {}

    private record Key(LotCode lot, String product) {}

    private record Ref(OrderNumber order, int line) {}

    /** All packs of the day's batches and all that are given from stock, each once; by lot, product, reason. */
    public static List<Origin> of(DayPlan plan) {
        Map<Ref, OrderLine.Source> sources = new HashMap<>();
        for (PlannedOrder order : plan.orders())
            sources.put(
                    new Ref(order.line().order(), order.line().line()),
                    order.line().source());
        Map<Origin, Integer> packs = new HashMap<>();
        Map<Key, Integer> promised = new HashMap<>();
        for (Allocation one : plan.allocation()) {
            Why why = sources.get(new Ref(one.order(), one.line())) == OrderLine.Source.STANDING
                    ? Why.STANDING
                    : Why.FIRM;
            add(packs, new Origin(one.lot(), one.product(), why, one.fromStock(), 0), one.packs());
            if (!one.fromStock()) promised.merge(new Key(one.lot(), one.product()), one.packs(), Integer::sum);
        }
        rest(plan, packs, promised);
        return packs.entrySet().stream()
                .map(entry -> new Origin(
                        entry.getKey().lot(),
                        entry.getKey().product(),
                        entry.getKey().why(),
                        entry.getKey().fromStock(),
                        entry.getValue()))
                .sorted(Comparator.comparing(Origin::lot)
                        .thenComparing(Origin::product)
                        .thenComparing(Origin::why)
                        .thenComparing(Origin::fromStock))
                .toList();
    }

    /** What is promised to nobody: first what the day's allowances ask for, the rest is what whole kettles give. */
    private static void rest(DayPlan plan, Map<Origin, Integer> packs, Map<Key, Integer> promised) {
        Map<String, Integer> allowed = new HashMap<>();
        for (DemandLine line : plan.demand()) allowed.merge(line.product(), line.allowancePacks(), Integer::sum);
        for (PlannedBatch batch : plan.batches())
            for (PlannedBatch.Filled filled : batch.packs()) {
                int free = filled.packs() - promised.getOrDefault(new Key(batch.lot(), filled.product()), 0);
                int allowance = Math.min(free, allowed.getOrDefault(filled.product(), 0));
                allowed.merge(filled.product(), -allowance, Integer::sum);
                add(packs, new Origin(batch.lot(), filled.product(), Why.ALLOWANCE, false, 0), allowance);
                add(packs, new Origin(batch.lot(), filled.product(), Why.WHOLE_KETTLE, false, 0), free - allowance);
            }
    }

    private static void add(Map<Origin, Integer> packs, Origin origin, int more) {
        if (more > 0) packs.merge(origin, more, Integer::sum);
    }

    /** Packs of one reason. */
    public static int packs(List<Origin> origins, Why why) {
        return origins.stream()
                .filter(origin -> origin.why() == why)
                .mapToInt(Origin::packs)
                .sum();
    }

    /** Where a plan's packs come from, in a sentence. */
    public static String sentence(DayPlan plan) {
        List<Origin> all = of(plan);
        List<String> parts = new ArrayList<>();
        parts.add(packs(all, Why.FIRM) + " ordered");
        parts.add(packs(all, Why.STANDING) + " of standing orders");
        if (packs(all, Why.ALLOWANCE) > 0)
            parts.add(packs(all, Why.ALLOWANCE) + " for what usually comes late or walks in");
        if (packs(all, Why.WHOLE_KETTLE) > 0) parts.add(packs(all, Why.WHOLE_KETTLE) + " because kettles are whole");
        int stock =
                all.stream().filter(Origin::fromStock).mapToInt(Origin::packs).sum();
        return "Packs: " + String.join(", ", parts) + (stock > 0 ? "; " + stock + " of them lie in stock." : ".");
    }
}
