package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import dawnkettle.store.StepKey;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/**
 * After a batch was lost, somebody is away or a station is down: the rest of the day is planned again, once for each such
 * record, and what changed is printed.
 */
final class ReplanLosses {
    static final String STEP = "plan after a loss";

    private final Office office;

    ReplanLosses(Office office) {
        this.office = office;
    }

    /** @param step runs a step that is due, for its day */
    void run(BiConsumer<StepKey, LocalDate> step) {
        days().forEach(day -> lostSince(day).ifPresent(number -> step.accept(new StepKey(STEP, day, number), day)));
    }

    /** The last such record of each day whose plan does not know of it. */
    List<Integer> due() {
        return days().flatMap(day -> lostSince(day).stream()).toList();
    }

    private Stream<LocalDate> days() {
        LocalDate today =
                LocalDate.ofInstant(office.now(), office.shop().house().zone());
        return Stream.of(today, office.shop().calendar().next(today));
    }

    /** The number of the last such record that the plan in force does not know of. */
    private Optional<Integer> lostSince(LocalDate day) {
        Optional<DayPlan> plan = office.plan(day);
        if (plan.isEmpty()) return Optional.empty();
        Instant computed = plan.get().heading().computedAt();
        Stream<Long> losses = office.ledger().records().all(day, Fact.Kind.LOST).stream()
                .filter(recorded -> recorded.recordedAt().isAfter(computed))
                .flatMap(recorded -> lot(recorded).stream())
                .flatMap(lot -> office.ledger().records().lossOf(lot).stream());
        return Stream.concat(losses, office.ledger().records().roomChangedSince(day, computed).stream())
                .max(Comparator.naturalOrder())
                .map(Math::toIntExact);
    }

    private static Optional<LotCode> lot(Recorded recorded) {
        return recorded.fact() instanceof Fact.LostBatch lost ? Optional.of(lost.lot()) : Optional.empty();
    }
}
