package dawnkettle.night;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.LabelNumbers;
import dawnkettle.store.LabelRows;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Runs of labels that broke off, from the ledger: open until each label was confirmed, or found by a person. */
public final class BrokenRuns {
    private final Office office;

    public BrokenRuns(Office office) {
        this.office = office;
    }

    /** Those that still need a person, the oldest first. */
    public List<BrokenRun> open() {
        return office.ledger().effects().in(Effect.State.AMBIGUOUS).stream()
                .filter(effect -> LabelRows.isRun(effect.key()))
                .flatMap(effect -> label(effect).stream())
                .map(this::of)
                .filter(run -> !run.isWhole())
                .toList();
    }

    BrokenRun of(PlannedLabel label) {
        LabelRows rows = office.ledger().labels();
        return new BrokenRun(
                label, rows.certain(label.lot(), label.product()), rows.doubtful(label.lot(), label.product()));
    }

    /** What has not surely come out of a lot's labels. */
    LabelNumbers uncertain(PlannedLabel label) {
        return LabelNumbers.of(1, label.count()).minus(of(label).certain());
    }

    /** A run of which the last label is now certain is done. */
    void settle(PlannedLabel label) {
        String key = key(label);
        Optional<Effect> run = office.ledger().effects().find(key);
        if (run.filter(effect -> effect.state() == Effect.State.AMBIGUOUS).isPresent()
                && of(label).isWhole())
            office.ledger().effects().done(key, office.now(), PrintLabels.count(label) + ", some by hand");
    }

    /** From now on the night prints nothing of these by itself. */
    void breakOff(PlannedLabel label, String why) {
        String key = key(label);
        Effect run = office.ledger()
                .effects()
                .intend(key, Effect.Kind.LABEL, label.lot().productionDate(), office.now());
        if (run.state() == Effect.State.AMBIGUOUS) return;
        office.ledger().effects().sending(key, office.now()); // no change where the night was at it
        office.ledger().effects().ambiguous(key, office.now(), why);
    }

    /**
     * At the start of the service: what was on its way when it stopped is in doubt. How large a group was sent is not
     * known then, so of labels all are that were not confirmed.
     */
    public void interrupted() {
        for (Effect effect : office.ledger().effects().interrupted(office.now()))
            if (LabelRows.isRun(effect.key())) doubt(effect);
    }

    /** A plan that cannot be read must not keep the service from starting. */
    private void doubt(Effect effect) {
        try {
            label(effect).ifPresent(this::doubt);
        } catch (RuntimeException mistake) {
            office.tell("what is in doubt of " + effect.key() + " did not get noted: " + mistake);
        }
    }

    private void doubt(PlannedLabel label) {
        for (LabelNumbers.Stretch rest :
                uncertain(label).minus(of(label).look()).stretches())
            office.ledger()
                    .labels()
                    .uncertain(
                            new LabelGroup(label.lot(), label.product(), rest.from(), rest.to()),
                            office.now(),
                            "the service stopped while they were sent");
        settle(label);
    }

    private Optional<PlannedLabel> label(Effect run) {
        LotCode lot = LabelRows.lotOf(run.key());
        Stream<PlannedLabel> labels = new KeptLabels(office).of(lot).stream();
        return labels.filter(label -> key(label).equals(run.key())).findFirst();
    }

    static String key(PlannedLabel label) {
        return LabelRows.effectKey(label.lot(), label.product());
    }
}
