package dawnkettle.night;

import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * A dawn check that ran by a clock in doubt may have run hours too early, and what was amended since would be in no plan: it
 * comes once more at its hour, by a clock that is known to be right.
 */
final class DawnAgain {
    static final String STEP = "second dawn check";

    private final Office office;

    DawnAgain(Office office) {
        this.office = office;
    }

    /** Before a dawn check runs: whether this is its hour nobody may know. */
    void noteIfInDoubt(Timetable.Slot slot) {
        if (new ClockGate(office).isUnknown())
            office.ledger().steps().due(StepKey.of(STEP, slot.businessDate()), slot.due(), office.now());
    }

    /** @param step runs a step that is due, for its day */
    void run(BiConsumer<StepKey, LocalDate> step) {
        Instant now = office.now();
        List<StepRow> open = office.ledger().steps().open(now).stream()
                .filter(row -> row.key().step().equals(STEP))
                .toList();
        if (open.isEmpty() || new ClockGate(office).isUnknown()) return;
        for (StepRow row : open)
            if (now.isAfter(row.dueAt().plus(Step.DAWN_CHECK.useful())))
                office.ledger().steps().skipped(row.key(), now, "it was too late to be of use");
            else step.accept(row.key(), row.key().businessDate());
    }
}
