package dawnkettle.sheet;

import dawnkettle.measure.Mass;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Recipe;
import dawnkettle.shop.Step;
import dawnkettle.shop.WorkStation;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The plan of a day, asked the questions that sheets ask.
 *
 * @param held lots that may not leave the house
 */
record Day(DayPlan plan, Desk desk, Set<LotCode> held) {
    /** Points (1/72 inch) of the bar over a held lot. */
    private static final double HELD_POINTS = 11;

    Day {
        held = Set.copyOf(held);
    }

    Day(DayPlan plan, Desk desk) {
        this(plan, desk, Set.of());
    }

    /** What stands over the row of a lot that may not leave; nothing over another. */
    List<Row> warning(LotCode lot) {
        return held.contains(lot) ? List.of(Row.bar(HELD_POINTS, desk.say(Word.HELD) + "  " + lot)) : List.of();
    }

    LocalDate date() {
        return plan.heading().productionDate();
    }

    /** Of the day's own lots only what tells them apart. */
    String shortly(LotCode lot) {
        String prefix = LotCode.dayOf(date()) + "-";
        return lot.text().startsWith(prefix) ? lot.text().substring(prefix.length()) : lot.text();
    }

    Instant madeAt() {
        return plan.heading().computedAt();
    }

    Recipe recipe(PlannedBatch batch) {
        return plan.floor().recipes().stream()
                .filter(recipe -> recipe.code().equals(batch.recipe()))
                .findFirst()
                .orElseGet(() -> desk.shop().recipe(batch.recipe()));
    }

    Optional<Step> step(PlannedOperation operation) {
        List<Step> steps = recipe(plan.batch(operation.batch())).steps();
        return operation.seq() >= 1 && operation.seq() <= steps.size()
                ? Optional.of(steps.get(operation.seq() - 1))
                : Optional.empty();
    }

    String stepName(PlannedOperation operation) {
        return step(operation).map(Step::name).orElse(operation.stage());
    }

    Optional<PlannedOperation> next(PlannedOperation operation) {
        return plan.operationsOf(operation.batch()).stream()
                .filter(other -> other.seq() > operation.seq())
                .findFirst();
    }

    /** The latest instant at which the step after {@code operation} may start; empty where its batch may stand. */
    Optional<Instant> latestStartAfter(PlannedOperation operation) {
        return next(operation)
                .flatMap(this::step)
                .flatMap(step -> step.longestWait().isPresent()
                        ? Optional.of(operation
                                .end()
                                .plusSeconds(60L * step.longestWait().getAsInt()))
                        : Optional.empty());
    }

    Optional<WorkStation> station(String code) {
        return desk.shop().floor().stations().stream()
                .filter(station -> station.code().equals(code))
                .findFirst();
    }

    String stationName(String code) {
        return station(code).map(WorkStation::name).orElse(code);
    }

    String materialName(String code) {
        return desk.shop().findMaterial(code).map(material -> material.name()).orElse(code);
    }

    /** Batches that feed this one, with how much. */
    List<Input> inputs(PlannedBatch batch) {
        return plan.batches().stream()
                .flatMap(from -> from.feeds().stream()
                        .filter(feed -> feed.batch().equals(batch.id()))
                        .map(feed -> new Input(from.id(), feed.mass())))
                .toList();
    }

    /** Mass of another batch that goes in. */
    record Input(String batch, Mass mass) {}

    Optional<LocalDate> bestBefore(LotCode lot, String product) {
        Optional<LocalDate> labelled = plan.labels().stream()
                .filter(label -> label.lot().equals(lot) && label.product().equals(product))
                .map(PlannedLabel::bestBefore)
                .findFirst();
        return labelled.or(() -> stock(lot, product).map(StockLot::bestBefore));
    }

    Optional<StockLot> stock(LotCode lot, String product) {
        return plan.stock().stream()
                .filter(stock -> stock.lot().equals(lot) && stock.product().equals(product))
                .findFirst();
    }

    List<PlannedOperation> inOrder() {
        return plan.operations().stream()
                .sorted(Comparator.comparing(PlannedOperation::start)
                        .thenComparing(PlannedOperation::station)
                        .thenComparingInt(PlannedOperation::place)
                        .thenComparing(PlannedOperation::batch))
                .toList();
    }

    /** Beans, or what it is made from, as words. */
    String input(PlannedBatch batch) {
        if (!batch.beans().isZero())
            return desk.say(Word.STATION_BEANS, desk.measures().mass(batch.beans()));
        return Words.join(
                ", ",
                inputs(batch).stream()
                        .map(input ->
                                desk.say(Word.STATION_INPUT, desk.measures().mass(input.mass()), input.batch()))
                        .toList());
    }

    Optional<String> dose(PlannedBatch batch) {
        return batch.coagulant()
                .map(dose -> desk.say(
                        Word.STATION_DOSE, desk.dose(dose.material(), dose.mass()), materialName(dose.material())));
    }
}
