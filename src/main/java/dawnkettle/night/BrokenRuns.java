package dawnkettle.night;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.LabelNumbers;
import dawnkettle.store.LabelRows;
import dawnkettle.store.StepKey;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Runs of labels that did not come out whole, from the ledger: open until each label was confirmed, or found by a person. */
public final class BrokenRuns {
    private static final String STOPPED = "the service stopped while it was sent";

    private final Office office;

    public BrokenRuns(Office office) {
        this.office = office;
    }

    /** Those that still need a person, the oldest first. */
    public List<BrokenRun> open() {
        Stream<PlannedLabel> inDoubt = office.ledger().labels().onceInDoubt().stream()
                .flatMap(one -> label(one.lot(), one.product()).stream());
        Stream<PlannedLabel> leftOff = office.ledger().effects().in(Effect.State.AMBIGUOUS).stream()
                .filter(effect -> LabelRows.isRun(effect.key()))
                .flatMap(effect -> label(effect).stream());
        return Stream.concat(inDoubt, leftOff)
                .distinct()
                .map(this::of)
                .filter(run -> !run.look().isEmpty() || isLeftOff(run))
                .toList();
    }

    private boolean isLeftOff(BrokenRun run) {
        return !run.isWhole() && !run.goesOn();
    }

    BrokenRun of(PlannedLabel label) {
        LabelRows rows = office.ledger().labels();
        return new BrokenRun(
                label,
                rows.certain(label.lot(), label.product()),
                rows.doubtful(label.lot(), label.product()),
                goesOn(label));
    }

    /** Whether the night has not yet done with them. */
    private boolean goesOn(PlannedLabel label) {
        LocalDate day = label.lot().productionDate();
        boolean isStepOver = office.ledger()
                .steps()
                .find(StepKey.of(Step.LABELS.word(), day))
                .filter(step -> step.state().isFinal())
                .isPresent();
        return !isStepOver && !isOver(label);
    }

    /** Whether the night prints nothing of these any more: all came out, or what is left is in doubt. */
    boolean isOver(PlannedLabel label) {
        return office.ledger()
                .effects()
                .find(key(label))
                .filter(effect -> effect.state() == Effect.State.DONE || effect.state() == Effect.State.AMBIGUOUS)
                .isPresent();
    }

    /** A run of which the last label is now certain is done. */
    void settle(PlannedLabel label) {
        String key = key(label);
        Optional<Effect> run = office.ledger().effects().find(key).filter(BrokenRuns::isOpen);
        if (run.isEmpty() || !of(label).isWhole()) return;
        office.ledger().effects().sending(key, office.now());
        office.ledger().effects().done(key, office.now(), PrintLabels.count(label) + ", some by hand");
    }

    private static boolean isOpen(Effect run) {
        return run.state() == Effect.State.AMBIGUOUS || run.state() == Effect.State.FAILED;
    }

    /**
     * The night's own run has ended, as far as it came: done where all is certain; ambiguous, and never gone on with, where
     * only labels in doubt are left; else failed, and what surely did not come out is printed at the next try.
     */
    void ended(PlannedLabel label, String why) {
        String key = key(label);
        BrokenRun run = of(label);
        if (run.isWhole()) office.ledger().effects().done(key, office.now(), PrintLabels.count(label));
        else if (run.missing().isEmpty()) leftInDoubt(key, why);
        else office.ledger().effects().failed(key, office.now(), why);
    }

    private void leftInDoubt(String key, String why) {
        Effect.State state =
                office.ledger().effects().find(key).map(Effect::state).orElseThrow();
        if (state != Effect.State.AMBIGUOUS) office.ledger().effects().ambiguous(key, office.now(), why);
    }

    /**
     * At the start of the service: the group that was on its way when it stopped is in doubt, and no other label is. Runs
     * come first, so that a power cut in the midst of this leaves none half noted, of which the rest would never come.
     */
    public void interrupted() {
        for (LabelGroup group : office.ledger().labels().inFlight())
            undisturbed(group.lot() + " " + group.product(), () -> doubt(group));
        for (Effect effect : office.ledger().effects().in(Effect.State.SENDING))
            if (LabelRows.isRun(effect.key()))
                undisturbed(effect.key(), () -> label(effect).ifPresent(label -> ended(label, STOPPED)));
        office.ledger().effects().interrupted(office.now());
    }

    /** Before a run goes on: what an earlier try was not able to note is in doubt. */
    void unnoted(PlannedLabel label, Effect before) {
        for (LabelGroup group : office.ledger().labels().inFlight())
            if (group.lot().equals(label.lot()) && group.product().equals(label.product())) doubt(group);
        if (before.state() == Effect.State.SENDING) ended(label, "what became of the last labels could not be noted");
    }

    /** A plan that cannot be read must not keep the service from starting; a ledger that takes nothing must. */
    private void undisturbed(String what, Runnable noting) {
        try {
            noting.run();
        } catch (DeviceAway | DiskAway refused) {
            throw refused;
        } catch (RuntimeException mistake) {
            office.tell("what is in doubt of " + what + " did not get noted: " + mistake);
        }
    }

    private void doubt(LabelGroup sent) {
        PlannedLabel label = label(sent.lot(), sent.product())
                .orElseThrow(() -> new IllegalStateException("no plan that is kept has them"));
        BrokenRun run = of(label);
        LabelNumbers group = LabelNumbers.of(sent.from(), Math.min(sent.to(), label.count()));
        office.ledger().inTransaction(() -> {
            for (LabelNumbers.Stretch part :
                    group.minus(run.certain()).minus(run.look()).stretches())
                office.ledger()
                        .labels()
                        .uncertain(
                                new LabelGroup(label.lot(), label.product(), part.from(), part.to()),
                                office.now(),
                                "the service stopped while they were sent");
            office.ledger().labels().landed(label.lot(), label.product(), office.now());
        });
    }

    private Optional<PlannedLabel> label(Effect run) {
        Stream<PlannedLabel> labels = new KeptLabels(office).of(LabelRows.lotOf(run.key())).stream();
        return labels.filter(label -> key(label).equals(run.key())).findFirst();
    }

    private Optional<PlannedLabel> label(LotCode lot, String product) {
        Stream<PlannedLabel> labels = new KeptLabels(office).of(lot).stream();
        return labels.filter(label -> label.product().equals(product)).findFirst();
    }

    static String key(PlannedLabel label) {
        return LabelRows.effectKey(label.lot(), label.product());
    }
}
