package dawnkettle.plan;

import dawnkettle.floor.Budget;
import dawnkettle.plan.Evening.Committed;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.IfCard.Drop;
import dawnkettle.plan.IfCard.Help;
import dawnkettle.plan.IfCard.Row;
import dawnkettle.plan.Losses.Possible;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Plans the day again for each loss, from what has happened when it is known, and tells what differs. */
final class WhatIf {
    /** Tries of the search for each replan: most of the day stays on the wall, and a card has some sixty rows. */
    private static final long DECODES = 20;
    /** So many batches at most are tried out as to what leaving them out would give. */
    private static final int TRIED_DROPS = 2;

    private final Shop shop;
    private final Evening evening;
    private final DayPlan plan;

    WhatIf(Shop shop, Evening evening, DayPlan plan) {
        this.shop = shop;
        this.evening = evening;
        this.plan = plan;
    }

    IfCard card() {
        return new IfCard(
                plan.heading().productionDate(),
                plan.heading().revision(),
                possible().stream().map(this::row).toList());
    }

    List<Possible> possible() {
        return new Losses(shop, plan, evening.now()).all();
    }

    /** The day as it would go on; empty where nothing of it needs what is lost. */
    Optional<DayPlan> replan(Possible loss) {
        return loss.disruption().map(one -> replan(one, loss.loss().knownAt()));
    }

    private Row row(Possible loss) {
        Optional<DayPlan> after = replan(loss);
        if (after.isEmpty()) return new Row(loss.loss(), List.of(), List.of(), Help.NONE);
        Differences differences = new Differences(plan, after.get(), loss.loss().knownAt());
        Offers offers = new Offers(shop, after.get());
        List<IfCard.Short> shorts = differences.shorts();
        Help help = new Help(
                differences.standIns(),
                offers.of(differences.shortLines()),
                differences.leftOut(loss.loss().id()),
                differences.extra(),
                drops(loss, after.get()));
        return new Row(loss.loss(), shorts, differences.late(), help);
    }

    private DayPlan replan(Disruption loss, Instant knownAt) {
        Disruption all = evening.committed().disruption().and(loss);
        Committed then = new Committed(Optional.of(plan), facts(knownAt), all);
        Budget own =
                new Budget(DECODES, evening.budget().seed(), evening.budget().guardMillis());
        return PlanDay.of(shop, evening.later(then, knownAt, own));
    }

    private List<Frozen> facts(Instant knownAt) {
        Set<Frozen> facts = new LinkedHashSet<>(plan.heading().frozen());
        for (Frozen fact : WhatHappened.by(plan, knownAt))
            if (facts.stream()
                    .noneMatch(own -> own.kind() == fact.kind() && own.id().equals(fact.id()))) facts.add(fact);
        return List.copyOf(facts);
    }

    /** Where vans are late: batches not begun whose leaving out makes them less so, for as few packs as can be. */
    private List<Drop> drops(Possible loss, DayPlan after) {
        int late = lateMinutes(after);
        if (late <= lateMinutes(plan)) return List.of();
        List<Drop> drops = new ArrayList<>();
        for (String batch : droppable(after, loss.loss().knownAt())) {
            Disruption both = loss.disruption()
                    .orElseThrow()
                    .and(Disruption.lost(batch, loss.loss().knownAt()));
            DayPlan without = replan(both, loss.loss().knownAt());
            Drop drop = new Drop(batch, missing(without) - missing(plan), lateMinutes(without));
            if (drop.lateMinutes() < late) drops.add(drop);
        }
        drops.sort(Comparator.comparingInt(Drop::lateMinutes)
                .thenComparingInt(Drop::packsShort)
                .thenComparing(Drop::batch));
        return drops;
    }

    /** Batches of the plan that are not begun, those with the fewest packs for customers first. */
    private List<String> droppable(DayPlan after, Instant knownAt) {
        return plan.batches().stream()
                .filter(batch -> plan.operationsOf(batch.id()).get(0).start().isAfter(knownAt))
                .filter(batch -> after.batches().stream()
                        .anyMatch(still ->
                                still.id().equals(batch.id()) && still.feeds().isEmpty()))
                .sorted(Comparator.comparingInt((PlannedBatch batch) -> promised(batch))
                        .thenComparing(PlannedBatch::id))
                .limit(TRIED_DROPS)
                .map(PlannedBatch::id)
                .toList();
    }

    private int promised(PlannedBatch batch) {
        return plan.allocation().stream()
                .filter(one -> one.lot().equals(batch.lot()))
                .mapToInt(Allocation::packs)
                .sum();
    }

    private static int missing(DayPlan plan) {
        return plan.orders().stream().mapToInt(PlannedOrder::declinedPacks).sum();
    }

    private static int lateMinutes(DayPlan plan) {
        return plan.routes().stream().mapToInt(PlannedRoute::lateMinutes).sum();
    }
}
