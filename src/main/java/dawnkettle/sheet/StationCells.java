package dawnkettle.sheet;

import dawnkettle.measure.Celsius;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The fields of a station's row that differ by what is done there. */
final class StationCells {
    /** FDA Food Code 3-501.14(A): to 21 °C within two hours, to 5 °C within six in all. */
    private static final Celsius FIRST_LIMIT = Celsius.degrees(21);

    private static final Celsius COLD = Celsius.degrees(5);

    private final Day day;
    private final Desk desk;

    StationCells(Day day) {
        this.day = day;
        this.desk = day.desk();
    }

    /** What goes in, the dose, the target, the packs: whatever this step needs to know. */
    Cell load(PlannedOperation operation, PlannedBatch batch) {
        List<Cell.Phrase> phrases = new ArrayList<>();
        if (operation.seq() == 1) input(batch, phrases);
        if (takesDose(operation, batch)) day.dose(batch).ifPresent(dose -> phrases.add(Cell.Phrase.bold(13, dose)));
        if (fillsPacks(operation)) packs(batch, phrases);
        day.step(operation)
                .map(step -> StationSheet.target(desk, step))
                .ifPresent(target -> phrases.add(
                        phrases.isEmpty() ? Cell.Phrase.bold(12.5, target) : Cell.Phrase.plain(10.5, target)));
        return new Cell.Lines(phrases);
    }

    private void input(PlannedBatch batch, List<Cell.Phrase> phrases) {
        phrases.add(Cell.Phrase.bold(12.5, day.input(batch)));
        for (PlannedBatch.FromTub from : batch.soaks())
            phrases.add(Cell.Phrase.plain(
                    10.5, desk.say(Word.STATION_TUB, from.tub(), desk.measures().mass(from.beans()))));
        if (!batch.water().isZero())
            phrases.add(Cell.Phrase.plain(
                    10.5, desk.say(Word.STATION_GRINDING_WATER, desk.measures().water(batch.water()))));
    }

    /** The first step at which curd is set; where no stage says so, none: the dose stands on the overview too. */
    private boolean takesDose(PlannedOperation operation, PlannedBatch batch) {
        Optional<PlannedOperation> setting = day.plan().operationsOf(batch.id()).stream()
                .filter(other -> Work.of(other.stage()) == Work.SET)
                .findFirst();
        return setting.isPresent() && setting.get().seq() == operation.seq();
    }

    /** The last step at which packs are filled, or the very last where no stage says so. */
    private boolean fillsPacks(PlannedOperation operation) {
        List<PlannedOperation> all = day.plan().operationsOf(operation.batch());
        return all.stream()
                .filter(other -> Work.of(other.stage()).packs())
                .reduce((first, second) -> second)
                .or(() -> all.stream().reduce((first, second) -> second))
                .map(last -> last.seq() == operation.seq())
                .orElse(false);
    }

    private void packs(PlannedBatch batch, List<Cell.Phrase> phrases) {
        for (PlannedBatch.Filled filled : batch.packs()) {
            phrases.add(Cell.Phrase.bold(12, desk.cases(new Desk.CasesAndLoose(filled.cases(), filled.loosePacks()))));
            phrases.add(Cell.Phrase.plain(10.5, desk.productName(filled.product())));
            day.bestBefore(batch.lot(), filled.product())
                    .ifPresent(date -> phrases.add(Cell.Phrase.plain(
                            10.5,
                            desk.say(Word.STATION_BEST_BEFORE, desk.dates().onLabel(date)))));
        }
        if (!batch.trim().isZero())
            phrases.add(Cell.Phrase.plain(
                    9.5, desk.say(Word.STATION_TRIM, desk.measures().mass(batch.trim()))));
    }

    /** Who waits for this, and until when at the latest. */
    Cell next(PlannedOperation operation, PlannedBatch batch) {
        Optional<PlannedOperation> next = day.next(operation);
        if (next.isEmpty()) return last(batch);
        List<Cell.Phrase> phrases = new ArrayList<>();
        phrases.add(Cell.Phrase.bold(
                11,
                day.stepName(next.get()) + " " + desk.dates().time(next.get().start())));
        phrases.add(Cell.Phrase.plain(10, day.stationName(next.get().station())));
        day.latestStartAfter(operation)
                .ifPresent(latest -> phrases.add(Cell.Phrase.bold(
                        10, desk.say(Word.STATION_NEXT_BY, desk.dates().time(latest)))));
        return new Cell.Lines(phrases);
    }

    private Cell last(PlannedBatch batch) {
        if (batch.feeds().isEmpty()) return Cell.text(desk.say(Word.STATION_LAST), Lettering.plain(10.5));
        String into = String.join(
                ", ", batch.feeds().stream().map(PlannedBatch.Feed::batch).toList());
        return Cell.text(desk.say(Word.STATION_FEEDS, into), Lettering.bold(11));
    }

    /** What the records of this step need. */
    List<List<String>> prompts(PlannedOperation operation) {
        List<String> at = List.of(desk.say(Word.AT));
        List<String> who = List.of(desk.say(Word.WHO));
        List<String> degreesAt = List.of(desk.say(Word.STATION_DEGREES), desk.say(Word.AT));
        List<String> out = List.of(desk.say(Word.STATION_YIELD));
        return switch (Work.of(operation.stage())) {
            case COOK, SET -> List.of(degreesAt, who);
            case FRY -> List.of(degreesAt, out, who);
            case PRESS, CUT -> List.of(out, who);
            case COOL -> List.of(cooled(FIRST_LIMIT), cooled(COLD), who);
            case PACK, FILL -> List.of(List.of(desk.say(Word.STATION_COUNT)), who);
            case GRIND, FILTER, OTHER -> List.of(at, who);
        };
    }

    private List<String> cooled(Celsius to) {
        return List.of(desk.say(Word.STATION_COOLED, desk.measures().temperature(to)));
    }
}
