package dawnkettle.night;

import dawnkettle.label.LabelRun;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.DeviceAway;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Prints the case labels of each lot shortly before it is packed, once; what is in doubt is never printed again by itself. */
final class PrintLabels {
    private final Office office;
    private final BrokenRuns runs;
    private final LabelGate gate;
    private final LotSlips slips;
    /** Why lots are not labelled, as it was told last. */
    private final Map<String, String> told = new HashMap<>();

    PrintLabels(Office office) {
        this.office = office;
        this.runs = new BrokenRuns(office);
        this.gate = new LabelGate(office);
        this.slips = new LotSlips(office);
    }

    /** Labels of one product of one lot, and when they are wanted. */
    record Due(PlannedLabel label, Instant at) {}

    /** What is still to be printed of a plan, the first wanted first. */
    List<Due> open(DayPlan plan) {
        return plan.labels().stream()
                .filter(label -> !runs.isOver(label) && !gate.isVoid(label.lot()))
                .map(label -> new Due(label, wanted(plan, label)))
                .sorted(Comparator.comparing(Due::at)
                        .thenComparing(due -> due.label().lot())
                        .thenComparing(due -> due.label().product()))
                .toList();
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
        for (PlannedLabel label : plan.labels()) if (gate.isVoid(label.lot())) slips.destroy(label);
        new AfterRestore(office).noteLabels(plan.labels());
        Map<LotCode, String> held = null;
        for (Due due : open(plan)) {
            if (due.at().isAfter(office.now())) return;
            Optional<String> doubt = new ClockGate(office).doubt();
            if (doubt.isPresent()) {
                office.tell("no dated label is printed: " + doubt.get());
                return;
            }
            if (held == null) held = new Gate(office).held(plan);
            LotCode lot = due.label().lot();
            boolean isResting = isResting(due.label());
            if (held.containsKey(lot)) {
                if (!isResting) refuse(plan, due.label(), held.get(lot));
            } else if ((!isResting || wasHeld(due.label())) && isFree(due.label())) print(plan, due.label());
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

    /** What stands against it is told once, not at each look. */
    private boolean isFree(PlannedLabel label) {
        Optional<String> objection = gate.objection(label);
        String before = told.put(BrokenRuns.key(label), objection.orElse(""));
        objection
                .filter(why -> !why.equals(before))
                .ifPresent(why -> office.tell("no label for lot " + label.lot() + ": " + why));
        return objection.isEmpty();
    }

    private boolean isResting(PlannedLabel label) {
        return office.ledger()
                .effects()
                .find(BrokenRuns.key(label))
                .filter(effect -> effect.state() == Effect.State.FAILED)
                .filter(effect -> Night.isResting(effect.changedAt(), effect.attempts(), office.now()))
                .isPresent();
    }

    private void print(DayPlan plan, PlannedLabel label) {
        String key = BrokenRuns.key(label);
        LocalDate day = plan.heading().productionDate();
        runs.unnoted(label, office.ledger().effects().intend(key, Effect.Kind.LABEL, day, office.now()));
        if (runs.isOver(label) || !office.ledger().effects().sending(key, office.now())) return;
        LabelLog log = new LabelLog(office);
        try {
            for (LabelRun run : left(label)) office.edges().labels().printer().print(run, log);
            log.landed();
            finish(label);
        } catch (DeviceAway away) {
            office.tell("labels of lot " + label.lot() + ": " + away.getMessage());
            if (away.isAmbiguous()) log.inDoubt();
            log.landed();
            runs.ended(label, away.getMessage());
            if (away.isAmbiguous()) tellDoubt(label);
        } catch (BadFile bad) {
            log.landed();
            office.ledger().effects().failed(key, office.now(), bad.getMessage());
            office.tell("no label for lot " + label.lot() + ": " + bad.getMessage());
        }
    }

    private void finish(PlannedLabel label) {
        runs.ended(label, "some are in doubt");
        if (runs.of(label).isWhole()) office.tell(count(label) + " of lot " + label.lot() + " " + label.product());
        else tellDoubt(label);
    }

    /** A slip says it among the labels once all that the night prints of them is printed. */
    private void tellDoubt(PlannedLabel label) {
        BrokenRun run = runs.of(label);
        office.tell(run.said());
        if (run.missing().isEmpty()) slips.count(run);
    }

    /** What is neither certain nor in doubt: the rest of a run that was stopped, less what a person printed meanwhile. */
    private List<LabelRun> left(PlannedLabel label) {
        LabelRun whole = office.edges().labels().lots().run(label, office.shop().product(label.product()));
        return runs.of(label).missing().stretches().stream()
                .map(left -> left.to() == whole.last() ? whole.from(left.from()) : whole.only(left.from(), left.to()))
                .toList();
    }
}
