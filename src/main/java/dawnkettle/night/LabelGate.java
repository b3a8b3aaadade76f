package dawnkettle.night;

import dawnkettle.plan.PlannedLabel;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import java.util.Optional;

/** The one place that says whether a lot may be labelled, to the night and to a person alike. */
final class LabelGate {
    private final Office office;

    LabelGate(Office office) {
        this.office = office;
    }

    /** Why no label of it may be printed now, with what lets it through; empty where it may. */
    Optional<String> objection(PlannedLabel label) {
        return writtenOff(label.lot())
                .map(why -> "lot " + label.lot() + " is written off (" + why + "); destroy what labels it has");
    }

    /** Whether it never will be labelled again. */
    boolean isVoid(LotCode lot) {
        return writtenOff(lot).isPresent();
    }

    private Optional<String> writtenOff(LotCode lot) {
        return office.ledger().records().all(Fact.Kind.LOST).stream()
                .map(recorded -> recorded.fact())
                .filter(Fact.LostBatch.class::isInstance)
                .map(Fact.LostBatch.class::cast)
                .filter(lost -> lost.lot().equals(lot))
                .map(Fact.LostBatch::why)
                .findFirst();
    }
}
