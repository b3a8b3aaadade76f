package dawnkettle.night;

import dawnkettle.label.Confirmed;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelRun;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.LabelRows;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.DeviceAway;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Prints the case labels of each lot shortly before it is packed, once; what is in doubt is never printed again by itself. */
final class PrintLabels {
    private final Office office;

    PrintLabels(Office office) {
        this.office = office;
    }

    /** Labels of one product of one lot, and when they are wanted. */
    record Due(PlannedLabel label, Instant at) {}

    /** What is still to be printed of a plan, the first wanted first. */
    List<Due> open(DayPlan plan) {
        return plan.labels().stream()
                .filter(label -> !isSettled(label))
                .map(label -> new Due(label, wanted(plan, label)))
                .sorted(Comparator.comparing(Due::at)
                        .thenComparing(due -> due.label().lot())
                        .thenComparing(due -> due.label().product()))
                .toList();
    }

    private boolean isSettled(PlannedLabel label) {
        return office.ledger()
                .effects()
                .find(key(label))
                .filter(effect -> effect.state() == Effect.State.DONE || effect.state() == Effect.State.AMBIGUOUS)
                .isPresent();
    }

    private static String count(PlannedLabel label) {
        return label.count() + (label.count() == 1 ? " label" : " labels");
    }

    private static String key(PlannedLabel label) {
        return LabelRows.effectKey(label.lot(), label.product());
    }

    private Instant wanted(DayPlan plan, PlannedLabel label) {
        Duration before = Duration.ofMinutes(office.papers().settings().times().labelsBeforeMinutes());
        LocalDate day = plan.heading().productionDate();
        Instant dawn =
                office.timetable().at(day, office.papers().settings().times().dawnCheck());
        Instant packed = packing(plan, label.lot()).minus(before);
        return packed.isBefore(dawn) ? dawn : packed;
    }

    /** When the lot's packing begins: its last step that takes hands. */
    private static Instant packing(DayPlan plan, LotCode lot) {
        List<PlannedOperation> steps =
                plan.operationsOf(plan.findBatch(lot).orElseThrow().id());
        return steps.stream()
                .filter(step -> step.halfHands() > 0)
                .max(Comparator.comparingInt(PlannedOperation::seq))
                .orElse(steps.get(steps.size() - 1))
                .start();
    }

    /** Prints what is wanted by now. */
    void run(DayPlan plan) {
        for (Due due : open(plan)) {
            if (due.at().isAfter(office.now())) return;
            Optional<String> doubt = office.edges().senses().time().doubt(office.now());
            if (doubt.isPresent()) {
                office.tell("no dated label is printed: " + doubt.get());
                return;
            }
            if (!isResting(due.label())) print(plan, due.label());
        }
    }

    private boolean isResting(PlannedLabel label) {
        return office.ledger()
                .effects()
                .find(key(label))
                .filter(effect -> effect.state() == Effect.State.FAILED)
                .filter(effect -> office.now().isBefore(effect.changedAt().plus(Night.wait(effect.attempts()))))
                .isPresent();
    }

    private void print(DayPlan plan, PlannedLabel label) {
        String key = key(label);
        LocalDate day = plan.heading().productionDate();
        office.ledger().effects().intend(key, Effect.Kind.LABEL, day, office.now());
        if (!office.ledger().effects().sending(key, office.now())) return;
        try {
            LabelRun run = office.edges()
                    .labels()
                    .lots()
                    .run(label, office.shop().product(label.product()))
                    .from(office.ledger().labels().confirmedCount(label.lot(), label.product()) + 1);
            office.edges().labels().printer().print(run, new Journal());
            office.ledger().effects().done(key, office.now(), count(label));
            office.tell(count(label) + " of lot " + label.lot() + " " + label.product());
        } catch (DeviceAway away) {
            if (away.isAmbiguous()) office.ledger().effects().ambiguous(key, office.now(), away.getMessage());
            else office.ledger().effects().failed(key, office.now(), away.getMessage());
            office.tell("labels of lot " + label.lot() + ": " + away.getMessage());
        } catch (BadFile bad) {
            office.ledger().effects().failed(key, office.now(), bad.getMessage());
            office.tell("no label for lot " + label.lot() + ": " + bad.getMessage());
        }
    }

    /** Writes down each group as the printer answers for it. */
    private final class Journal implements LabelJournal {
        @Override
        public void intended(Confirmed group) {
            // The effect of the whole run is the intent; groups are noted when their fate is known.
        }

        @Override
        public void confirmed(Confirmed group) {
            office.ledger().labels().confirmed(noted(group), office.now());
        }

        @Override
        public void paused(String why) {
            office.tell("the label printer waits: " + why);
        }

        @Override
        public void doubtful(Confirmed group) {
            office.ledger().labels().uncertain(noted(group), office.now(), "the printer did not answer for them");
        }

        private LabelGroup noted(Confirmed group) {
            return new LabelGroup(new LotCode(group.lot()), group.product(), group.first(), group.last());
        }
    }
}
