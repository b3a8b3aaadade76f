package dawnkettle.plan;

import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;

/** Everything that is printed, labelled and mailed is a function of this one value. */
public record DayPlan(
        Heading heading,
        List<PlannedOrder> orders,
        List<DemandLine> demand,
        List<PlannedBatch> batches,
        List<PlannedSoak> soaks,
        DayFloor floor,
        List<PlannedOperation> operations,
        List<StockLot> stock,
        List<Allocation> allocation,
        List<PlannedRoute> routes,
        List<PlannedLabel> labels,
        List<Shortage> shortages,
        List<String> advice,
        List<String> warnings,
        Optional<Quality> quality) {
    public DayPlan {
        orders = List.copyOf(orders);
        demand = List.copyOf(demand);
        batches = List.copyOf(batches);
        soaks = List.copyOf(soaks);
        operations = List.copyOf(operations);
        stock = List.copyOf(stock);
        allocation = List.copyOf(allocation);
        routes = List.copyOf(routes);
        labels = List.copyOf(labels);
        shortages = List.copyOf(shortages);
        advice = List.copyOf(advice);
        warnings = List.copyOf(warnings);
    }

    /** The same with what is known of how good the run is. */
    DayPlan withQuality(Optional<Quality> known) {
        return with(heading, known);
    }

    /** The same under another heading. */
    public DayPlan withHeading(Heading other) {
        return with(other, quality);
    }

    /** The same with more for the crew to know. */
    public DayPlan withWarnings(List<String> more) {
        if (more.isEmpty()) return this;
        List<String> all = new java.util.ArrayList<>(warnings);
        all.addAll(more);
        return with(heading, quality, all);
    }

    /** The same with more of what may help. */
    public DayPlan withAdvice(List<String> more) {
        if (more.isEmpty()) return this;
        List<String> all = new java.util.ArrayList<>(advice);
        all.addAll(more);
        return with(heading, quality, warnings, all);
    }

    private DayPlan with(Heading other, Optional<Quality> known) {
        return with(other, known, warnings);
    }

    private DayPlan with(Heading other, Optional<Quality> known, List<String> warnings) {
        return with(other, known, warnings, advice);
    }

    private DayPlan with(Heading other, Optional<Quality> known, List<String> warnings, List<String> advice) {
        return new DayPlan(
                other,
                orders,
                demand,
                batches,
                soaks,
                floor,
                operations,
                stock,
                allocation,
                routes,
                labels,
                shortages,
                advice,
                warnings,
                known);
    }

    public PlannedBatch batch(String id) {
        return batches.stream()
                .filter(batch -> batch.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("no batch " + id));
    }

    public Optional<PlannedBatch> findBatch(LotCode lot) {
        return batches.stream().filter(batch -> batch.lot().equals(lot)).findFirst();
    }

    /** A batch's steps in their order. */
    public List<PlannedOperation> operationsOf(String batch) {
        return operations.stream()
                .filter(operation -> operation.batch().equals(batch))
                .sorted(java.util.Comparator.comparingInt(PlannedOperation::seq))
                .toList();
    }

    public long lateRoutes() {
        return routes.stream().filter(route -> route.lateMinutes() > 0).count();
    }
}
