package dawnkettle.night;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.LabelNumbers;
import dawnkettle.store.RestoredRows;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What went out between a copy of the ledger and its being put back is known to nobody: labels of that time are in doubt
 * and never print by themselves, sheets and mails of it go out again and say so.
 */
final class AfterRestore {
    /** What is sent within a day and a half may have been sent by the ledger that was put aside. */
    private static final Duration FOR_MAILS = Duration.ofHours(36);

    private final Office office;

    AfterRestore(Office office) {
        this.office = office;
    }

    /** Notes which of these labels are in doubt, each once. */
    void noteLabels(List<PlannedLabel> labels) {
        Optional<RestoredRows.Restored> restored = office.ledger().restored().last();
        if (restored.isEmpty()) return;
        for (PlannedLabel label : labels) if (isInDoubt(label, restored.get())) doubt(label, restored.get());
    }

    private boolean isInDoubt(PlannedLabel label, RestoredRows.Restored restored) {
        Optional<Effect> run = office.ledger().effects().find(BrokenRuns.key(label));
        boolean isKnown = run.filter(effect -> effect.state() == Effect.State.DONE
                        || effect.changedAt().isAfter(restored.at()))
                .isPresent();
        if (isKnown) return false;
        if (restored.isExact())
            return restored.labels().stream()
                    .anyMatch(one ->
                            one.lot().equals(label.lot()) && one.product().equals(label.product()));
        LocalDate day = label.lot().productionDate();
        return !labelsDue(day).isAfter(restored.at()) && !day.isBefore(date(restored.from()));
    }

    private Instant labelsDue(LocalDate day) {
        return office.timetable().at(day, office.papers().settings().times().dawnCheck());
    }

    private void doubt(PlannedLabel label, RestoredRows.Restored restored) {
        String why = "the ledger was put back from " + restored.copy() + ", which does not know of them";
        String key = BrokenRuns.key(label);
        BrokenRun run = new BrokenRuns(office).of(label);
        office.ledger().inTransaction(() -> {
            for (LabelNumbers.Stretch part : run.missing().stretches())
                office.ledger()
                        .labels()
                        .uncertain(
                                new LabelGroup(label.lot(), label.product(), part.from(), part.to()),
                                office.now(),
                                why);
            office.ledger().effects().intend(key, Effect.Kind.LABEL, label.lot().productionDate(), office.now());
            office.ledger().effects().sending(key, office.now());
            office.ledger().effects().ambiguous(key, office.now(), why);
        });
        office.tell("labels of lot " + label.lot() + " " + label.product() + " are in doubt: " + why);
    }

    /** Whether a sheet of that day that the ledger does not know may have come out before it was put back. */
    boolean mayHaveSheet(LocalDate businessDate) {
        return office.ledger()
                .restored()
                .last()
                .filter(restored -> !office.timetable().soakCall(businessDate).isAfter(restored.at()))
                .filter(restored -> !businessDate.isBefore(date(restored.from())))
                .isPresent();
    }

    /** Whether a step's mail of now may have gone out before the ledger was put back. */
    boolean mayHaveMail() {
        return office.ledger()
                .restored()
                .last()
                .filter(restored -> office.now().isBefore(restored.at().plus(FOR_MAILS)))
                .isPresent();
    }

    private LocalDate date(Instant instant) {
        return instant.atZone(office.shop().house().zone()).toLocalDate();
    }
}
