package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The batches of the plan before as a revision finds them: what is lost gives nothing any more, what was made from it is lost
 * with it, and what was not begun yet is given up.
 */
final class KeptBatches {
    private final Shop shop;
    private final Evening evening;
    private final DayPlan before;
    private final Map<String, Brew> kept = new LinkedHashMap<>();
    private final Map<String, Instant> lost = new LinkedHashMap<>();
    private final Set<String> givenUp = new LinkedHashSet<>();

    KeptBatches(Shop shop, Evening evening, DayPlan before) {
        this.shop = shop;
        this.evening = evening;
        this.before = before;
        for (Frozen fact : before.heading().frozen())
            if (fact.kind() == Frozen.Kind.BATCH_LOST) lost.put(fact.id(), fact.at());
        for (Disruption.LostBatch one : evening.committed().disruption().batches()) lose(one.batch(), one.at());
        loseChildren();
    }

    private void lose(String batch, Instant at) {
        if (before.batches().stream().noneMatch(one -> one.id().equals(batch))) return;
        if (isStarted(batch)) lost.putIfAbsent(batch, at);
        else givenUp.add(batch);
    }

    /** What no run was found for: given up, or lost where it was begun already. */
    void lose(Set<String> batches) {
        batches.forEach(batch -> lose(batch, evening.now()));
        loseChildren();
    }

    /** What is made from a lost batch is lost as well. */
    private void loseChildren() {
        int known;
        do {
            known = lost.size() + givenUp.size();
            for (PlannedBatch batch : before.batches()) {
                boolean dead = givenUp.contains(batch.id());
                Optional<Instant> at = Optional.ofNullable(lost.get(batch.id()));
                if (dead || at.isPresent()) batch.feeds().forEach(feed -> lose(feed.batch(), at.orElse(evening.now())));
            }
        } while (lost.size() + givenUp.size() > known);
    }

    boolean isStarted(String batch) {
        return evening.committed().has(Frozen.Kind.BATCH_STARTED, batch);
    }

    /** Whether its lot is held: nothing of it may leave. */
    boolean isHeld(Brew brew) {
        return evening.larder().held().contains(before.batch(brew.name).lot());
    }

    /** Batches that are lost or given up. */
    List<PlannedBatch> gone() {
        return before.batches().stream()
                .filter(batch -> lost.containsKey(batch.id()) || givenUp.contains(batch.id()))
                .toList();
    }

    Collection<Brew> brews() {
        return kept.values();
    }

    Optional<Brew> of(Allocation one) {
        return before.findBatch(one.lot()).map(batch -> kept.get(batch.id()));
    }

    /** Facts for the heading: batches of which nothing can be used. */
    List<Frozen> facts() {
        List<Frozen> facts = new ArrayList<>();
        lost.forEach((batch, at) -> {
            if (!evening.committed().has(Frozen.Kind.BATCH_LOST, batch))
                facts.add(new Frozen(Frozen.Kind.BATCH_LOST, batch, at));
        });
        return facts;
    }

    /** All afresh, full of the packs that the sheet on the wall names. */
    void rebuild() {
        kept.clear();
        for (PlannedBatch batch : before.batches()) {
            if (givenUp.contains(batch.id())) continue;
            Recipe recipe = shop.recipe(batch.recipe());
            Brew brew = new Brew(batch, recipe, recipe.soakGroup().isPresent() ? batch.beans() : fedWith(batch));
            if (!lost.containsKey(batch.id()) || isDelivered(batch))
                batch.packs().forEach(filled -> brew.fill(shop.product(filled.product()), filled.packs()));
            kept.put(batch.id(), brew);
        }
        for (PlannedBatch batch : before.batches())
            for (PlannedBatch.Feed feed : batch.feeds())
                if (kept.containsKey(batch.id()) && kept.containsKey(feed.batch()))
                    kept.get(batch.id()).feed(kept.get(feed.batch()), feed.mass());
        lost.forEach((batch, at) -> kept.get(batch).lose(stepsBegun(batch, at)));
    }

    private int stepsBegun(String batch, Instant lostAt) {
        return (int) before.operationsOf(batch).stream()
                .filter(step -> step.start().isBefore(lostAt) || step.seq() == 1)
                .count();
    }

    /** Whether a van has left with some of it: its packs then stand as they were filled. */
    private boolean isDelivered(PlannedBatch batch) {
        return before.allocation().stream()
                .anyMatch(one -> one.lot().equals(batch.lot())
                        && evening.committed().has(Frozen.Kind.ROUTE_GONE, Van.due(one.route(), one.deliveryDate())));
    }

    private Mass fedWith(PlannedBatch child) {
        return Mass.sum(before.batches().stream()
                .flatMap(batch -> batch.feeds().stream())
                .filter(feed -> feed.batch().equals(child.id()))
                .map(PlannedBatch.Feed::mass)
                .toList());
    }
}
