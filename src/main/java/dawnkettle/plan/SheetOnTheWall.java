package dawnkettle.plan;

import dawnkettle.floor.Hands;
import dawnkettle.floor.Placement;
import dawnkettle.plan.Heading.Frozen;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The steps of the plan before, as people read them on the wall: which of them are not moved any more. */
final class SheetOnTheWall {
    /** What starts within this is not moved any more: people are walking to it. */
    private static final int FREEZE_MINUTES = 60;

    private final DayPlan before;
    private final Evening evening;
    private final DayClock clock;
    private final List<Hands> there;

    /** @param there hands that are there, without who is missing */
    SheetOnTheWall(DayPlan before, Evening evening, DayClock clock, List<Hands> there) {
        this.before = before;
        this.evening = evening;
        this.clock = clock;
        this.there = there;
    }

    Instant freeze() {
        return evening.now().plusSeconds(60L * FREEZE_MINUTES);
    }

    /**
     * Batches that can't be made as they stand there: their beans are not ready or too old then, or a station or hands that
     * they need are not there.
     */
    Set<String> hit(Collection<Brew> kept) {
        Hits hits = new Hits(before, evening, clock, there);
        for (Brew brew : kept) if (!brew.isLost() && !isFrozen(brew) && !soakHolds(brew)) hits.add(brew.name);
        Set<String> hit = hits.of(kept.stream().filter(brew -> !brew.isLost()).toList());
        if (evening.committed().disruption().isNone())
            kept.stream().filter(this::isFrozen).forEach(brew -> hit.remove(brew.name));
        return hit;
    }

    /**
     * The steps that stay: of a batch that is hit those that are begun, of one that may be moved none, of others all.
     *
     * @param hit batches that can't stay as they are
     * @param moved batches that may be moved if nothing of them is frozen
     */
    Map<String, List<Placement>> fixed(Collection<Brew> kept, Set<String> hit, Set<String> moved) {
        Map<String, List<Placement>> fixed = new HashMap<>();
        for (Brew brew : kept) {
            List<PlannedOperation> steps = before.operationsOf(brew.name);
            int stay = steps.size();
            if (brew.isLost()) stay = brew.steps().size();
            else if (hit.contains(brew.name)) stay = begun(steps);
            else if (moved.contains(brew.name) && !isFrozen(brew)) stay = 0;
            if (stay > 0)
                fixed.put(
                        brew.name,
                        steps.subList(0, stay).stream().map(this::placement).toList());
        }
        return fixed;
    }

    /** Steps of a batch that are begun. */
    private int begun(List<PlannedOperation> steps) {
        return (int) steps.stream()
                .filter(step -> step.start().isBefore(evening.now()))
                .count();
    }

    private boolean isFrozen(Brew brew) {
        return evening.committed().has(Frozen.Kind.BATCH_STARTED, brew.name)
                || !before.operationsOf(brew.name).get(0).start().isAfter(freeze())
                || evening.committed()
                        .has(
                                Frozen.Kind.LOT_LABELLED,
                                before.batch(brew.name).lot().text());
    }

    private boolean soakHolds(Brew brew) {
        int grind = clock.minute(before.operationsOf(brew.name).get(0).start());
        return brew.soaks.stream().allMatch(share -> share.tub().ready <= grind && grind <= share.tub().latest);
    }

    private Placement placement(PlannedOperation step) {
        return new Placement(
                step.batch(),
                step.seq() - 1,
                step.station(),
                step.place() - 1,
                clock.minute(step.start()),
                clock.minute(step.end()));
    }
}
