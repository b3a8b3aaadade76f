package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.stock.LotCode;
import dawnkettle.store.KeptPlan;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The labels of a lot as the newest plan has them that knows the lot. */
final class KeptLabels {
    private final Office office;

    KeptLabels(Office office) {
        this.office = office;
    }

    /** One a product; empty where no plan that is kept has the lot. */
    List<PlannedLabel> of(LotCode lot) {
        return revisions(lot)
                .map(plan -> plan.labels().stream()
                        .filter(label -> label.lot().equals(lot))
                        .toList())
                .filter(labels -> !labels.isEmpty())
                .findFirst()
                .orElse(List.of());
    }

    private Stream<DayPlan> revisions(LotCode lot) {
        LocalDate day;
        try {
            day = lot.productionDate();
        } catch (DateTimeException noDay) {
            return Stream.empty();
        }
        int latest =
                office.ledger().plans().latest(day).map(kept -> kept.revision()).orElse(0);
        return IntStream.iterate(latest, revision -> revision >= 1, revision -> revision - 1)
                .mapToObj(revision -> office.ledger().plans().find(day, revision))
                .flatMap(Optional::stream)
                .map(KeptPlan::json)
                .map(office.edges().plans()::read);
    }
}
