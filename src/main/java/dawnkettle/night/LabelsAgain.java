package dawnkettle.night;

import dawnkettle.label.LabelRun;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.store.LabelGroup;
import dawnkettle.store.LabelNumbers;
import dawnkettle.trouble.DeviceAway;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Prints labels that a person asks for, each marked as a copy, or notes those that the person has found. */
public final class LabelsAgain {
    private final Office office;
    private final BrokenRuns runs;

    public LabelsAgain(Office office) {
        this.office = office;
        this.runs = new BrokenRuns(office);
    }

    /**
     * @param product needed where the lot fills more than one
     * @param from number of the first label
     * @param to number of the last
     * @param why what happened
     */
    public record Asked(String lot, Optional<String> product, int from, int to, String why) {
        private String numbers() {
            return from == to ? "label " + from : "labels " + from + " to " + to;
        }

        private String said() {
            return numbers() + ": " + why;
        }
    }

    /**
     * Prints them once more; what was not printed before is certain from now on.
     *
     * @return what was done, in a sentence
     * @throws dawnkettle.trouble.BadFile where what was asked cannot be
     * @throws DeviceAway where they did not come out, or perhaps
     */
    public String print(Asked asked) {
        PlannedLabel label = label(asked);
        refuseHeld(label);
        Optional<String> objection = new LabelGate(office).objection(label);
        if (objection.isPresent())
            throw ByHand.refused("--lot", "no label of \"" + label.lot() + "\" is printed", objection.get());
        Optional<String> doubt = new ClockGate(office).doubt();
        if (doubt.isPresent()) throw DeviceAway.clean("no dated label is printed: " + doubt.get(), null);
        LabelRun copies = office.edges()
                .labels()
                .lots()
                .copies(label, office.shop().product(label.product()), asked.from(), asked.to());
        String key = ByHand.key("labels " + label.lot() + " " + label.product() + " " + office.now());
        office.ledger().effects().intend(key, Effect.Kind.LABEL, label.lot().productionDate(), office.now());
        office.ledger().effects().sending(key, office.now());
        print(copies, key, asked, label);
        return asked.numbers() + " of lot " + label.lot() + " " + label.product()
                + (copies.first() == copies.last() ? " is" : " are") + " printed, marked as a copy";
    }

    private void refuseHeld(PlannedLabel label) {
        office.plan(label.lot().productionDate())
                .map(plan -> new Gate(office).held(plan).get(label.lot()))
                .ifPresent(why -> {
                    throw ByHand.refused(
                            "--lot",
                            "lot \"" + label.lot() + "\" is held: " + why,
                            "a named person lets it go: record release " + label.lot() + " by NAME WHY");
                });
    }

    private void print(LabelRun copies, String key, Asked asked, PlannedLabel label) {
        LabelLog log = new LabelLog(office);
        try {
            office.edges().labels().printer().print(copies, log);
        } catch (DeviceAway away) {
            String note = asked.said() + "; " + away.getMessage();
            if (away.isAmbiguous()) {
                log.inDoubt();
                office.ledger().effects().ambiguous(key, office.now(), note);
            } else office.ledger().effects().failed(key, office.now(), note);
            log.landed();
            throw away;
        }
        log.landed();
        office.ledger().effects().done(key, office.now(), asked.said());
        runs.settle(label);
    }

    /** Notes that a person holds them, so that they are in doubt no more. @return what was done, in a sentence */
    public String found(Asked asked) {
        PlannedLabel label = label(asked);
        LabelNumbers open = runs.of(label).look();
        LabelNumbers found = open.minus(open.minus(LabelNumbers.of(asked.from(), asked.to())));
        if (found.isEmpty())
            throw ByHand.refused(
                    "--found",
                    "none of " + asked.numbers() + " is in doubt",
                    open.isEmpty() ? "no label of this lot is" : "look at " + open);
        office.ledger().inTransaction(() -> {
            for (LabelNumbers.Stretch part : found.stretches())
                office.ledger()
                        .labels()
                        .found(
                                new LabelGroup(label.lot(), label.product(), part.from(), part.to()),
                                office.now(),
                                asked.why());
            runs.settle(label);
        });
        return (found.count() == 1 ? "label " : "labels ") + found + " of lot " + label.lot() + " " + label.product()
                + " noted as found";
    }

    private PlannedLabel label(Asked asked) {
        if (asked.why().isBlank())
            throw ByHand.refused("--why", "\"" + asked.why() + "\" says nothing", "write what happened to the labels");
        PlannedLabel label = ofProduct(asked, ofLot(asked));
        if (asked.from() < 1 || asked.to() < asked.from() || asked.to() > label.count())
            throw ByHand.refused(
                    "--from " + asked.from() + " --to " + asked.to(),
                    "lot " + label.lot() + " has no such labels of \"" + label.product() + "\"",
                    "write numbers from 1 to " + label.count() + ", the lower first");
        return label;
    }

    private List<PlannedLabel> ofLot(Asked asked) {
        boolean isCode = asked.lot().matches("[0-9]{6}-[A-Z]{2}[0-9]{2,3}");
        List<PlannedLabel> labels = isCode ? new KeptLabels(office).of(new LotCode(asked.lot())) : List.of();
        if (labels.isEmpty())
            throw ByHand.refused(
                    "--lot",
                    "no plan has a labelled lot \"" + asked.lot() + "\"",
                    "write it as on the pick sheet or the slip, like 261204-FI01");
        return labels;
    }

    private static PlannedLabel ofProduct(Asked asked, List<PlannedLabel> labels) {
        if (asked.product().isEmpty() && labels.size() == 1) return labels.get(0);
        String code = asked.product().orElse("");
        return labels.stream()
                .filter(label -> label.product().equals(code))
                .findFirst()
                .orElseThrow(() -> ByHand.refused(
                        "--product",
                        "lot " + asked.lot()
                                + (code.isEmpty() ? " fills several products" : " has no labels of \"" + code + "\""),
                        "write " + labels.stream().map(PlannedLabel::product).collect(Collectors.joining(" or "))));
    }
}
