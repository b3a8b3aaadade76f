package dawnkettle.night;

import dawnkettle.label.Confirmed;
import dawnkettle.label.LabelRun;
import dawnkettle.label.LabelSlips;
import dawnkettle.label.LabelText;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelNumbers;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.Trouble;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Prints the case labels of each lot shortly before it is packed, once; what is in doubt is never printed again by itself. */
final class PrintLabels {
    private final Office office;
    private final BrokenRuns runs;

    PrintLabels(Office office) {
        this.office = office;
        this.runs = new BrokenRuns(office);
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
                .find(BrokenRuns.key(label))
                .filter(effect -> effect.state() == Effect.State.DONE || effect.state() == Effect.State.AMBIGUOUS)
                .isPresent();
    }

    static String count(PlannedLabel label) {
        return label.count() + (label.count() == 1 ? " label" : " labels");
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

    /** Prints what is wanted by now; a held lot gets no label. */
    void run(DayPlan plan) {
        Map<LotCode, String> held = null;
        for (Due due : open(plan)) {
            if (due.at().isAfter(office.now())) return;
            Optional<String> doubt = office.edges().senses().time().doubt(office.now());
            if (doubt.isPresent()) {
                office.tell("no dated label is printed: " + doubt.get());
                return;
            }
            if (held == null) held = new Gate(office).held(plan);
            LotCode lot = due.label().lot();
            boolean isResting = isResting(due.label());
            if (!held.containsKey(lot)) {
                if (!isResting || wasHeld(due.label())) print(plan, due.label());
            } else if (!isResting) refuse(plan, due.label(), held.get(lot));
        }
    }

    /** What was released is printed at once. */
    private boolean wasHeld(PlannedLabel label) {
        return office.ledger()
                .effects()
                .find(BrokenRuns.key(label))
                .filter(effect -> effect.note().startsWith(held(label)))
                .isPresent();
    }

    private static String held(PlannedLabel label) {
        return "lot " + label.lot() + " is held: ";
    }

    private void refuse(DayPlan plan, PlannedLabel label, String why) {
        String key = BrokenRuns.key(label);
        office.ledger().effects().intend(key, Effect.Kind.LABEL, plan.heading().productionDate(), office.now());
        if (!office.ledger().effects().sending(key, office.now())) return;
        String said = held(label) + why;
        office.ledger().effects().failed(key, office.now(), said);
        office.tell("no label of " + said);
    }

    private boolean isResting(PlannedLabel label) {
        return office.ledger()
                .effects()
                .find(BrokenRuns.key(label))
                .filter(effect -> effect.state() == Effect.State.FAILED)
                .filter(effect -> office.now().isBefore(effect.changedAt().plus(Night.wait(effect.attempts()))))
                .isPresent();
    }

    private void print(DayPlan plan, PlannedLabel label) {
        String key = BrokenRuns.key(label);
        LocalDate day = plan.heading().productionDate();
        office.ledger().effects().intend(key, Effect.Kind.LABEL, day, office.now());
        if (!office.ledger().effects().sending(key, office.now())) return;
        LabelLog log = new LabelLog(office);
        try {
            for (LabelRun run : left(label)) office.edges().labels().printer().print(run, log);
            office.ledger().effects().done(key, office.now(), count(label));
            office.tell(count(label) + " of lot " + label.lot() + " " + label.product());
        } catch (DeviceAway away) {
            office.tell("labels of lot " + label.lot() + ": " + away.getMessage());
            if (away.isAmbiguous()) breakOff(label, log, away);
            else office.ledger().effects().failed(key, office.now(), away.getMessage());
        } catch (BadFile bad) {
            office.ledger().effects().failed(key, office.now(), bad.getMessage());
            office.tell("no label for lot " + label.lot() + ": " + bad.getMessage());
        }
    }

    private LabelRun whole(PlannedLabel label) {
        return office.edges().labels().lots().run(label, office.shop().product(label.product()));
    }

    /** What is not certain yet: the rest of a run that was stopped, less what a person printed meanwhile. */
    private List<LabelRun> left(PlannedLabel label) {
        LabelRun whole = whole(label);
        return runs.uncertain(label).stretches().stream()
                .map(left -> left.to() == whole.last() ? whole.from(left.from()) : whole.only(left.from(), left.to()))
                .toList();
    }

    private void breakOff(PlannedLabel label, LabelLog log, DeviceAway away) {
        Optional<Confirmed> doubtful = log.inDoubt();
        runs.breakOff(label, away.getMessage());
        office.tell(runs.of(label).said());
        doubtful.ifPresent(group -> printSlip(label, group));
    }

    /** Lies among the labels for whoever packs the lot; where the printer does not take it, the words said must do. */
    private void printSlip(PlannedLabel label, Confirmed doubtful) {
        boolean isRestMissing = runs.of(label).missing().equals(LabelNumbers.of(doubtful.last() + 1, label.count()));
        LabelRun whole = whole(label);
        LabelText words = LabelSlips.brokenOff(isRestMissing ? whole : whole.only(1, doubtful.last()), doubtful);
        try {
            office.edges()
                    .labels()
                    .lots()
                    .slip(label.lot(), office.shop().product(label.product()), words)
                    .ifPresent(slip -> office.edges().labels().printer().print(slip, group -> {}));
        } catch (Trouble trouble) {
            office.tell("no slip says so beside the labels: " + trouble.getMessage());
        }
    }
}
