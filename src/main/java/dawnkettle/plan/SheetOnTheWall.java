package dawnkettle.plan;

import dawnkettle.floor.Placement;
import dawnkettle.plan.Heading.Frozen;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The steps of the plan before, as people read them on the wall: which of them are not moved any more. */
final class SheetOnTheWall {
    /** What starts within this is not moved any more: people are walking to it. */
    private static final int FREEZE_MINUTES = 60;

    private final DayPlan before;
    private final Evening evening;
    private final DayClock clock;

    SheetOnTheWall(DayPlan before, Evening evening, DayClock clock) {
        this.before = before;
        this.evening = evening;
        this.clock = clock;
    }

    Instant freeze() {
        return evening.now().plusSeconds(60L * FREEZE_MINUTES);
    }

    /** All steps of {@code kept} where every soak holds; otherwise those that are started, labelled or about to start. */
    Map<String, List<Placement>> fixed(Collection<Brew> kept) {
        boolean soaksHold = kept.stream().allMatch(this::soakHolds);
        Map<String, List<Placement>> fixed = new HashMap<>();
        for (Brew brew : kept) {
            List<PlannedOperation> steps = before.operationsOf(brew.name);
            if (soaksHold || isFrozen(brew, steps))
                fixed.put(brew.name, steps.stream().map(this::placement).toList());
        }
        return fixed;
    }

    private boolean isFrozen(Brew brew, List<PlannedOperation> steps) {
        return evening.committed().has(Frozen.Kind.BATCH_STARTED, brew.name)
                || !steps.get(0).start().isAfter(freeze())
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
