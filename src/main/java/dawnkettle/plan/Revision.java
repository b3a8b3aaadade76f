package dawnkettle.plan;

import dawnkettle.floor.Budget;
import dawnkettle.floor.Placement;
import dawnkettle.measure.Mass;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.shop.Product;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A plan that starts from the one before it. Batches keep their beans, tub, lot and, unless a soak moves, their minutes;
 * what is labelled, started or about to start within the freeze is not touched. Lines that changed are served from what
 * is free, then from batches added at the end.
 */
final class Revision {
    private final Shop shop;
    private final Evening evening;
    private final DayClock clock;
    private final TubTimes times;
    private final DayPlan before;
    private final GoneVans gone;
    private final SheetOnTheWall wall;
    private final FloorOfDay floor;
    private final KeptBatches kept;

    Revision(Shop shop, Evening evening, DayClock clock, TubTimes times) {
        this.shop = shop;
        this.before = evening.committed().before().orElseThrow();
        this.gone = new GoneVans(evening, before);
        this.evening = gone.asItStands(clock);
        this.clock = clock;
        this.times = times;
        this.floor =
                new FloorOfDay(shop, clock, evening.now(), evening.committed().disruption());
        this.wall = new SheetOnTheWall(before, this.evening, clock, floor.hands());
        this.kept = new KeptBatches(shop, this.evening, before);
    }

    DayPlan plan() {
        while (true) {
            Wants wants = new Wants(shop, evening, clock);
            kept.rebuild();
            giveAsBefore(wants);
            gone.leave(wants);
            reuse(wants);
            wants.lines.forEach(this::keepDeclined);
            List<Brew> more = new Batches(shop, wants, limits()).make();
            Attempt.Outcome outcome = run(wants, more);
            if (gaveUp(outcome)) continue;
            boolean hasRoom = outcome.failed().isEmpty();
            if (!hasRoom) outcome = withoutNew(wants);
            if (gaveUp(outcome)) continue;
            DayPlan after = write(wants, outcome);
            if (!hasRoom || more.isEmpty() || !delaysVan(after)) return after;
            Attempt.Outcome without = withoutNew(wants);
            return failedOfBefore(without).isEmpty() ? write(wants, without) : after;
        }
    }

    /** Whether batches of the plan before find no place; they are given up, and the day is looked at anew. */
    private boolean gaveUp(Attempt.Outcome outcome) {
        Set<String> failed = failedOfBefore(outcome);
        kept.lose(failed);
        return !failed.isEmpty();
    }

    private static Set<String> failedOfBefore(Attempt.Outcome outcome) {
        return outcome.failed().stream()
                .filter(Brew::isKept)
                .map(brew -> brew.name)
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** A line keeps the lots that the sheet on the wall names for it, as far as it still wants them and they are not lost. */
    private void giveAsBefore(Wants wants) {
        for (Allocation one : before.allocation()) {
            if (one.fromStock()) continue;
            Optional<Brew> brew = kept.of(one);
            if (brew.isEmpty()) continue;
            boolean gives = !brew.get().isLost() && !kept.isHeld(brew.get());
            wants.lines.stream()
                    .filter(line -> line.isFor(one) && (gives || gone.carry(line)))
                    .forEach(line -> give(line, brew.get(), one.packs()));
        }
    }

    private static void give(OpenLine line, Brew brew, int packs) {
        int given = Math.min(packs, line.open());
        if (given == 0) return;
        line.gifts.add(new OpenLine.Gift(Optional.empty(), Optional.of(brew), given));
        if (!line.due.isEmpty()) brew.dues.add(line.due);
    }

    /** No batch is added for what may still come, nor for what the plan before had no room for already. */
    private void keepDeclined(OpenLine line) {
        if (line.line.isEmpty()) line.refuse("no batch is added for what may still come");
        else
            before.orders().stream()
                    .filter(order -> order.line().order().equals(line.line.get().order())
                            && order.line().line() == line.line.get().line())
                    .forEach(order -> line.refuse(Math.min(line.open(), order.declinedPacks()), order.reason()));
    }

    /**
     * Where a line is open, what is free in batches whose packing lies ahead and whose labels are not printed may become
     * another product; all other packs stay as they are, and what may still come has its share of those that are free.
     */
    private void reuse(Wants wants) {
        Map<String, List<Brew>> byRecipe = new HashMap<>();
        for (Brew brew : kept.brews()) {
            if (kept.isHeld(brew) || !isOpen(brew) || !isWanted(wants, brew.recipe)) continue;
            for (Product product : List.copyOf(brew.packs.keySet())) brew.empty(product, free(brew, product, wants));
            byRecipe.computeIfAbsent(brew.recipe.code(), code -> new ArrayList<>())
                    .add(brew);
        }
        List<OpenLine> movable = wants.lines.stream()
                .filter(line -> line.line.isPresent() && !gone.carry(line))
                .toList();
        byRecipe.forEach(
                (recipe, brews) -> new LateServing(brews, this::packed).serve(wants.of(shop.recipe(recipe)), movable));
        byRecipe.forEach((recipe, brews) -> new Filler(brews)
                .packSurplus(shop.products().stream()
                        .filter(product -> product.recipe().equals(recipe))
                        .filter(product -> Wants.coolsTooSlowly(shop, product).isEmpty())
                        .toList()));
        for (OpenLine line : wants.lines) if (line.line.isEmpty()) leaveFree(line, wants);
    }

    /** The minute at which a kept batch is packed and cold by the sheet on the wall. */
    private int packed(Brew brew) {
        return before.operationsOf(brew.name).stream()
                .mapToInt(step -> clock.minute(step.end()))
                .max()
                .orElseThrow();
    }

    /** What came late is made if there is room; it never makes a van late that was in time. */
    private boolean delaysVan(DayPlan after) {
        return after.routes().stream()
                .anyMatch(van -> before.routes().stream()
                        .anyMatch(was -> was.route().equals(van.route())
                                && was.departs().equals(van.departs())
                                && van.lateMinutes() > was.lateMinutes()));
    }

    private static boolean isWanted(Wants wants, Recipe recipe) {
        return wants.of(recipe).stream().anyMatch(line -> line.line.isPresent());
    }

    private void leaveFree(OpenLine line, Wants wants) {
        for (Brew brew : kept.brews())
            if (brew.packs.containsKey(line.product) && !brew.isLost())
                give(line, brew, Math.max(0, free(brew, line.product, wants)));
    }

    private int free(Brew brew, Product product, Wants wants) {
        int given = wants.lines.stream()
                .filter(line -> line.product.equals(product))
                .flatMap(line -> line.gifts.stream())
                .filter(gift -> gift.brew().filter(brew::equals).isPresent())
                .mapToInt(OpenLine.Gift::packs)
                .sum();
        return brew.packs.get(product) - given;
    }

    private boolean isOpen(Brew brew) {
        PlannedBatch batch = before.batch(brew.name);
        if (brew.isLost()
                || evening.committed().has(Frozen.Kind.LOT_LABELLED, batch.lot().text())) return false;
        List<PlannedOperation> steps = before.operationsOf(brew.name);
        return steps.get(steps.size() - 1).start().isAfter(wall.freeze());
    }

    /** Beans left over in filled tubs, and what can still be put to soak. */
    private Batches.Limits limits() {
        Map<String, Mass> left = new HashMap<>();
        Map<String, Mass> most = new HashMap<>();
        Soaking tubs = soaking();
        for (TubDraft tub : tubs.filled()) left.merge(tub.soakGroup, tub.left(), Mass::plus);
        Mass free = Mass.sum(tubs.free().stream()
                .filter(tub -> times.earliestReady(tub).isPresent())
                .map(dawnkettle.shop.Tub::mostBeans)
                .toList());
        for (Recipe recipe : shop.recipes())
            recipe.soakGroup()
                    .ifPresent(group ->
                            most.put(group, left.getOrDefault(group, Mass.ZERO).plus(free)));
        return new Batches.Limits(Map.of(), most, Batches.MOST_KETTLES, Map.of());
    }

    private Soaking soaking() {
        Map<String, Integer> freeFrom = new HashMap<>();
        evening.soakRoom().occupied().forEach(tub -> freeFrom.put(tub.tub(), clock.minuteAtOrAfter(tub.until())));
        Soaking soaking = new Soaking(shop.floor().tubs(), freeFrom, times);
        before.soaks().forEach(soak -> soaking.commit(PlanDay.committed(shop, clock, times, soak)));
        for (Brew brew : kept.brews()) {
            brew.soaks.clear();
            before.batch(brew.name)
                    .soaks()
                    .forEach(from -> soaking.tub(from.tub()).pour(brew, from.beans()));
        }
        return soaking;
    }

    /** As close to the sheet on the wall as can be without a van being later, or a batch lost, for it. */
    private Attempt.Outcome run(Wants wants, List<Brew> more) {
        soaking();
        Set<String> hit = wall.hit(kept.brews());
        Attempt.Outcome close = run(wants, more, wall.fixed(kept.brews(), hit, Set.of()));
        if (hit.isEmpty() || isInTime(close)) return close;
        Set<String> all = kept.brews().stream().map(brew -> brew.name).collect(Collectors.toSet());
        soaking();
        Attempt.Outcome free = run(wants, more, wall.fixed(kept.brews(), hit, all));
        if (isWorse(close, free)) return free;
        soaking();
        return run(wants, more, wall.fixed(kept.brews(), hit, Set.of()));
    }

    private static boolean isInTime(Attempt.Outcome outcome) {
        return outcome.failed().isEmpty() && outcome.run().score().weightedLateness() == 0;
    }

    private static boolean isWorse(Attempt.Outcome one, Attempt.Outcome other) {
        if (one.failed().size() != other.failed().size())
            return one.failed().size() > other.failed().size();
        return one.run().score().weightedLateness() > other.run().score().weightedLateness();
    }

    private Attempt.Outcome run(Wants wants, List<Brew> more, Map<String, List<Placement>> fixed) {
        List<Brew> all = new ArrayList<>(kept.brews());
        all.addAll(more);
        boolean stands = all.stream()
                .allMatch(brew -> fixed.getOrDefault(brew.name, List.of()).size()
                        == brew.steps().size());
        Budget budget = stands ? evening.budget().within(0, 0) : evening.budget();
        Attempt.Bench bench = new Attempt.Bench(this::soaking, times);
        return new Attempt(shop, floor, bench, fixed).of(all, wants.vans, budget);
    }

    /** When new batches find no room, what they were for is declined and the rest stands as it was. */
    private Attempt.Outcome withoutNew(Wants wants) {
        wants.reopen();
        wants.lines.forEach(line -> line.decline(line.open(), whyNone(line.product)));
        return run(wants, List.of());
    }

    private String whyNone(Product product) {
        List<String> lost = kept.gone().stream()
                .filter(batch -> batch.recipe().equals(product.recipe()))
                .map(PlannedBatch::id)
                .toList();
        if (lost.isEmpty()) return "it came too late for another batch";
        return String.join(", ", lost) + (lost.size() == 1 ? " is" : " are")
                + " lost and no other batch is made in time";
    }

    private DayPlan write(Wants wants, Attempt.Outcome outcome) {
        FairCopy copy = new FairCopy(shop, withLosses(), clock);
        for (Brew brew : kept.brews())
            copy.names().keep(brew, brew.name, before.batch(brew.name).lot());
        DayPlan after = copy.write(wants, outcome);
        if (!isSameDay(after)) return after;
        return after.withQuality(after.quality()
                .flatMap(now -> before.quality().map(was -> was.with(now.lateMinutes()))));
    }

    /** Whether what was proved of the run still is: the same steps, beans ready at the same minutes, the same stations open. */
    private boolean isSameDay(DayPlan after) {
        return after.operations().equals(before.operations())
                && after.floor().stations().equals(before.floor().stations())
                && ready(after).equals(ready(before));
    }

    private static Map<String, Instant> ready(DayPlan plan) {
        return plan.soaks().stream().collect(Collectors.toMap(PlannedSoak::tub, PlannedSoak::readyAt));
    }

    private Evening withLosses() {
        List<Frozen> facts = new ArrayList<>(evening.committed().frozen());
        facts.addAll(kept.facts());
        Evening.Committed then = new Evening.Committed(
                evening.committed().before(), facts, evening.committed().disruption());
        return evening.later(then, evening.now(), evening.budget());
    }
}
