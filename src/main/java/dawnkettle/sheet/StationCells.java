package dawnkettle.sheet;

import dawnkettle.measure.Celsius;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import java.time.LocalDate;
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
        if (takesDose(operation, batch)) batch.coagulant().ifPresent(dose -> dose(dose, phrases));
        if (fillsPacks(operation)) packs(batch, phrases);
        day.step(operation)
                .filter(step -> phrases.isEmpty() || step.target().isPresent())
                .map(step -> StationSheet.target(desk, step))
                .ifPresent(target -> phrases.add(Cell.Phrase.bold(phrases.isEmpty() ? 12.5 : 11, target)));
        return new Cell.Lines(phrases);
    }

    private void dose(PlannedBatch.Dose dose, List<Cell.Phrase> phrases) {
        String measured = desk.dose(dose.material(), dose.mass());
        String weighed = desk.measures().dose(dose.mass());
        phrases.add(Cell.Phrase.bold(15, measured));
        if (!measured.equals(weighed)) phrases.add(Cell.Phrase.plain(10.5, "= " + weighed));
        phrases.add(Cell.Phrase.plain(10.5, day.materialName(dose.material())));
    }

    private void input(PlannedBatch batch, List<Cell.Phrase> phrases) {
        phrases.add(Cell.Phrase.bold(12.5, day.input(batch)));
        if (batch.soaks().size() == 1)
            phrases.add(Cell.Phrase.plain(
                    10.5, desk.say(Word.STATION_TUB, batch.soaks().get(0).tub())));
        else
            for (PlannedBatch.FromTub from : batch.soaks())
                phrases.add(Cell.Phrase.plain(
                        10.5,
                        desk.say(
                                Word.STATION_TUB_PART,
                                from.tub(),
                                desk.measures().mass(from.beans()))));
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
            phrases.add(Cell.Phrase.bold(11, desk.cases(new Desk.CasesAndLoose(filled.cases(), filled.loosePacks()))));
            phrases.add(Cell.Phrase.plain(10.5, desk.productName(filled.product())));
        }
        if (!batch.packs().isEmpty() && !batch.trim().isZero())
            phrases.add(Cell.Phrase.plain(
                    9.5, desk.say(Word.STATION_TRIM, desk.measures().mass(batch.trim()))));
    }

    /** Who waits for this, and until when at the latest. */
    Cell next(PlannedOperation operation, PlannedBatch batch) {
        Optional<PlannedOperation> next = day.next(operation);
        if (next.isEmpty()) return last(batch);
        List<Cell.Phrase> phrases = new ArrayList<>();
        phrases.add(Cell.Phrase.bold(11, day.stepName(next.get())));
        phrases.add(Cell.Phrase.plain(
                10,
                desk.say(
                        Word.STATION_NEXT,
                        desk.dates().time(next.get().start()),
                        day.stationName(next.get().station()))));
        day.latestStartAfter(operation)
                .ifPresent(latest -> phrases.add(Cell.Phrase.bold(
                        10, desk.say(Word.STATION_NEXT_BY, desk.dates().time(latest)))));
        if (fillsPacks(operation)) dates(batch, phrases);
        return new Cell.Lines(phrases);
    }

    /** Where the batch goes, and the date that its packs carry. */
    private Cell last(PlannedBatch batch) {
        List<Cell.Phrase> phrases = new ArrayList<>();
        String into = String.join(
                ", ", batch.feeds().stream().map(PlannedBatch.Feed::batch).toList());
        if (!into.isEmpty()) phrases.add(Cell.Phrase.bold(11, desk.say(Word.STATION_FEEDS, into)));
        dates(batch, phrases);
        if (phrases.isEmpty()) phrases.add(Cell.Phrase.plain(10.5, desk.say(Word.STATION_LAST)));
        return new Cell.Lines(phrases);
    }

    private void dates(PlannedBatch batch, List<Cell.Phrase> phrases) {
        List<LocalDate> dates = batch.packs().stream()
                .flatMap(filled -> day.bestBefore(batch.lot(), filled.product()).stream())
                .toList();
        if (dates.isEmpty()) return;
        phrases.add(Cell.Phrase.plain(10, desk.say(Word.STATION_BEST_BEFORE)));
        boolean one = dates.stream().distinct().count() == 1;
        for (int i = 0; i < (one ? 1 : dates.size()); i++) {
            if (!one) phrases.add(Cell.Phrase.plain(10, batch.packs().get(i).product()));
            phrases.add(Cell.Phrase.bold(11.5, desk.dates().onLabel(dates.get(i))));
        }
    }

    /** What the records of this step need. */
    List<List<String>> prompts(PlannedOperation operation) {
        List<String> atWho = List.of(desk.say(Word.AT), desk.say(Word.WHO));
        List<String> who = List.of(desk.say(Word.WHO));
        List<String> degreesAt = List.of(desk.say(Word.STATION_DEGREES), desk.say(Word.AT));
        List<String> out = List.of(desk.say(Word.STATION_YIELD));
        return switch (Work.of(operation.stage())) {
            case COOK, SET, HEAT -> List.of(degreesAt, who);
            case FRY -> List.of(degreesAt, out, who);
            case PRESS, CUT -> List.of(out, who);
            case COOL -> List.of(cooled(FIRST_LIMIT), cooled(COLD), who);
            case COLD -> List.of(cooled(COLD), who);
            case PACK, FILL -> List.of(List.of(desk.say(Word.STATION_COUNT)), who);
            case GRIND, FILTER, OTHER -> List.of(atWho);
        };
    }

    private List<String> cooled(Celsius to) {
        return List.of(desk.say(Word.STATION_COOLED, desk.measures().temperature(to)));
    }
}
