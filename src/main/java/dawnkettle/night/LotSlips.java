package dawnkettle.night;

import dawnkettle.label.LabelSlips;
import dawnkettle.label.LabelText;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.store.Effect;
import dawnkettle.trouble.Trouble;
import java.util.Optional;

/** Slips that lie among the labels of a lot for whoever packs it; where none can be printed, the words told must do. */
final class LotSlips {
    private final Office office;

    LotSlips(Office office) {
        this.office = office;
    }

    /** What came out and what to look at. */
    void count(BrokenRun run) {
        String why =
                print(run.label(), LabelSlips.count(run.label().lot().text(), product(run.label()), run.counted()));
        if (!why.isEmpty()) office.tell("no slip says so beside the labels: " + why);
    }

    /** Once for each product of a lot that is written off and of which a label is, or may be, about. */
    void destroy(PlannedLabel label) {
        BrokenRun out = new BrokenRuns(office).of(label);
        int labels = out.certain().count() + out.look().count();
        String key = "void/" + label.lot() + "/" + label.product();
        if (labels == 0 || isDoneOrResting(key)) return;
        office.ledger().effects().intend(key, Effect.Kind.LABEL, label.lot().productionDate(), office.now());
        if (!office.ledger().effects().sending(key, office.now())) return;
        String why = print(label, LabelSlips.destroy(label.lot().text(), product(label), labels));
        String said = labels + (labels == 1 ? " label" : " labels") + " of lot " + label.lot() + " " + label.product()
                + (labels == 1 ? " is" : " are") + " void: destroy " + (labels == 1 ? "it" : "them");
        if (why.isEmpty()) office.ledger().effects().done(key, office.now(), said);
        else office.ledger().effects().failed(key, office.now(), said + "; no slip says so: " + why);
        office.tell(said + (why.isEmpty() ? "" : "; no slip says so: " + why));
    }

    private boolean isDoneOrResting(String key) {
        Optional<Effect> effect = office.ledger().effects().find(key);
        if (effect.isEmpty()) return false;
        boolean isResting = office.now()
                .isBefore(effect.get().changedAt().plus(Night.wait(effect.get().attempts())));
        return effect.get().state() == Effect.State.DONE || effect.get().state() == Effect.State.FAILED && isResting;
    }

    private String product(PlannedLabel label) {
        return office.shop().product(label.product()).name();
    }

    /** @return why it did not come out; empty where it did. One slip too many harms nobody. */
    private String print(PlannedLabel label, LabelText words) {
        try {
            office.edges()
                    .labels()
                    .lots()
                    .slip(label.lot(), office.shop().product(label.product()), words)
                    .ifPresent(slip -> office.edges().labels().printer().print(slip, group -> {}));
            return "";
        } catch (Trouble trouble) {
            return trouble.getMessage();
        }
    }
}
