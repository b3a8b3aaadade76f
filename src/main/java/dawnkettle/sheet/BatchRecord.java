package dawnkettle.sheet;

import dawnkettle.measure.Celsius;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Allergen;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The page that an inspector asks for: one batch, what was planned filled in, and a blank for each value that is
 * measured. What a record must hold follows 21 CFR 117.305 (read at govregs.com): actual values, made at the time, with
 * the plant, the date and time, initials, product and lot.
 */
final class BatchRecord {
    /** FDA Food Code 3-501.14(A): from 57 °C to 21 °C within two hours, to 5 °C within six in all. */
    private static final Celsius FIRST_LIMIT = Celsius.degrees(21);

    private static final Celsius COLD = Celsius.degrees(5);
    private static final int OTHERWISE_LINES = 1;

    private final Day day;
    private final Desk desk;
    private final PlannedBatch batch;

    BatchRecord(Day day, PlannedBatch batch) {
        this.day = day;
        this.desk = day.desk();
        this.batch = batch;
    }

    Sheet sheet() {
        Masthead masthead = PlanHead.of(day.plan(), desk, desk.say(Word.RECORD_TITLE, batch.id()));
        String name = "record-" + batch.id() + "-" + batch.lot();
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.RECORD, name, desk.style().paper(), day.madeAt());
        return desk.sheet(draft, masthead.withFirst(""), this::write);
    }

    private void write(Flow flow) {
        flow.add(new Block.Plain(
                List.of(Cell.Phrase.bold(13, facts()), Cell.Phrase.plain(10, desk.say(Word.RECORD_NOTE)))));
        flow.add(Block.Heading.small(desk.say(Word.RECORD_INPUTS)), inputs());
        flow.add(Block.Heading.small(desk.say(Word.RECORD_STEPS)), steps());
        flow.add(Block.Heading.small(desk.say(Word.RECORD_OUT)), out());
        flow.add(Block.Heading.small(desk.say(Word.RECORD_OTHERWISE)), blanks(closing()));
    }

    private String facts() {
        String contains =
                day.recipe(batch).allergens().stream().map(Allergen::word).collect(Collectors.joining(", "));
        return desk.say(
                Word.RECORD_FACTS,
                day.recipe(batch).name(),
                batch.lot(),
                contains,
                desk.dates().full(batch.packDate()));
    }

    private List<List<String>> closing() {
        List<List<String>> lines = new ArrayList<>();
        for (int i = 0; i < OTHERWISE_LINES; i++) lines.add(List.of(""));
        lines.add(List.of(desk.say(Word.RECORD_THERMOMETER), desk.say(Word.RECORD_RELEASED)));
        lines.add(List.of(desk.say(Word.RECORD_CHECKED), desk.say(Word.AT)));
        return lines;
    }

    private static Table blanks(List<List<String>> lines) {
        Row row = Row.of(new Cell.Blanks(lines, false, 7.4));
        return new Table(List.of(new Table.Column("", 1)), 0, List.of(Table.Section.plain(List.of(row)))).dense();
    }

    private Table inputs() {
        List<Table.Column> columns = List.of(
                new Table.Column(desk.say(Word.RECORD_MATERIAL), 62),
                new Table.Column(desk.say(Word.PICK_LOT), 44),
                new Table.Column(desk.say(Word.RECORD_PLANNED), 36),
                new Table.Column(desk.say(Word.RECORD_ACTUAL), 30),
                new Table.Column(desk.say(Word.WHO), 20));
        List<Row> rows = new ArrayList<>();
        List<PlannedSoak> soaks = batch.soaks().stream()
                .flatMap(from -> soak(from.tub()).stream())
                .toList();
        List<String> beans = soaks.stream()
                .flatMap(soak -> soak.beanLots().stream())
                .distinct()
                .toList();
        String others = batch.materialLots().stream()
                .filter(lot -> !beans.contains(lot))
                .collect(Collectors.joining(", "));
        if (!batch.beans().isZero())
            rows.add(input(
                    desk.say(Word.RECORD_BEANS),
                    String.join(", ", beans),
                    desk.measures().mass(batch.beans())));
        for (Day.Input from : day.inputs(batch))
            rows.add(input(
                    desk.say(Word.RECORD_BATCH, from.batch()),
                    day.plan().batch(from.batch()).lot().toString(),
                    desk.measures().mass(from.mass())));
        if (!batch.water().isZero())
            rows.add(input(desk.say(Word.RECORD_WATER), "–", desk.measures().water(batch.water())));
        batch.coagulant()
                .ifPresent(dose -> rows.add(
                        input(day.materialName(dose.material()), others, desk.dose(dose.material(), dose.mass()))));
        for (PlannedSoak soak : soaks)
            rows.add(Row.across(Row.Look.PLAIN, Cell.text(soakLine(soak), Lettering.plain(10.5))));
        return new Table(columns, 6.8, List.of(Table.Section.plain(rows))).dense();
    }

    private Row input(String what, String lot, String planned) {
        Cell lots = lot.isEmpty() ? blank() : Cell.text(lot, Lettering.plain(10));
        return Row.of(
                Cell.text(what, Lettering.bold(10.5)),
                lots,
                Cell.text(planned, Lettering.plain(10.5)),
                blank(),
                blank());
    }

    private Optional<PlannedSoak> soak(String tub) {
        return day.plan().soaks().stream()
                .filter(soak -> soak.tub().equals(tub))
                .findFirst();
    }

    private String soakLine(PlannedSoak soak) {
        return desk.say(
                Word.RECORD_SOAK_LINE,
                soak.tub(),
                desk.dates().timeFrom(soak.fillAt(), day.date()),
                desk.dates().timeFrom(soak.readyAt(), day.date()),
                desk.dates().timeFrom(soak.latestGrindAt(), day.date()),
                desk.measures().temperature(soak.waterTemperature()));
    }

    private Table steps() {
        List<Table.Column> columns = List.of(
                new Table.Column(desk.say(Word.RECORD_STEP), 42),
                new Table.Column(desk.say(Word.RECORD_PLANNED), 30),
                new Table.Column(desk.say(Word.RECORD_TARGET), 32),
                new Table.Column(desk.say(Word.RECORD_BEGUN), 20),
                new Table.Column(desk.say(Word.RECORD_ENDED), 20),
                new Table.Column(desk.say(Word.STATION_DEGREES), 28),
                new Table.Column(desk.say(Word.WHO), 20));
        List<Row> rows =
                day.plan().operationsOf(batch.id()).stream().map(this::step).toList();
        return new Table(columns, 6.8, List.of(Table.Section.plain(rows))).dense();
    }

    private Row step(PlannedOperation operation) {
        Work work = Work.of(operation.stage());
        boolean cooled = work == Work.COOL || work == Work.COLD;
        String target =
                day.step(operation).map(step -> StationSheet.target(desk, step)).orElse("");
        Cell degrees = work.isMeasured() && !cooled
                ? new Cell.Blanks(List.of(List.of("")), false, 6)
                : cooled ? cooling(work) : Cell.text("–", Lettering.plain(10));
        return Row.of(
                Cell.stack(
                        Cell.Phrase.bold(10, day.stepName(operation)),
                        Cell.Phrase.plain(8.5, day.stationName(operation.station()))),
                Cell.text(
                        desk.dates().time(operation.start()) + " – "
                                + desk.dates().time(operation.end()),
                        Lettering.plain(10.5)),
                Cell.text(target, Lettering.plain(10.5)),
                blank(),
                blank(),
                degrees,
                blank());
    }

    /** When it was at 21 °C and at 5 °C. */
    private Cell cooling(Work work) {
        List<List<String>> at = new ArrayList<>();
        if (work == Work.COOL)
            at.add(List.of(desk.first(Word.STATION_COOLED, desk.measures().temperature(FIRST_LIMIT))));
        at.add(List.of(desk.first(Word.STATION_COOLED, desk.measures().temperature(COLD))));
        return new Cell.Blanks(at, false, 6);
    }

    private Table out() {
        List<Table.Column> columns = List.of(
                new Table.Column("", 104),
                new Table.Column(desk.say(Word.RECORD_PLANNED), 42),
                new Table.Column(desk.say(Word.RECORD_ACTUAL), 28),
                new Table.Column(desk.say(Word.WHO), 20));
        List<Row> rows = new ArrayList<>();
        rows.add(output(desk.say(Word.RECORD_MASS), desk.measures().mass(batch.expected())));
        for (PlannedBatch.Filled filled : batch.packs())
            rows.add(output(pack(filled), desk.cases(new Desk.CasesAndLoose(filled.cases(), filled.loosePacks()))));
        if (!batch.trim().isZero())
            rows.add(output(desk.say(Word.RECORD_TRIM), desk.measures().mass(batch.trim())));
        int labels = day.plan().labels().stream()
                .filter(label -> label.lot().equals(batch.lot()))
                .mapToInt(PlannedLabel::count)
                .sum();
        if (labels > 0)
            rows.add(
                    Row.across(Row.Look.PLAIN, Cell.text(desk.say(Word.RECORD_LABELS, labels), Lettering.plain(10.5))));
        return new Table(columns, 6.8, List.of(Table.Section.plain(rows))).dense();
    }

    private String pack(PlannedBatch.Filled filled) {
        String best = day.bestBefore(batch.lot(), filled.product())
                .map(desk.dates()::onLabel)
                .orElse("?");
        return desk.say(Word.RECORD_PACK, desk.productName(filled.product()), best);
    }

    private static Row output(String what, String planned) {
        return Row.of(
                Cell.text(what, Lettering.bold(10.5)), Cell.text(planned, Lettering.plain(10.5)), blank(), blank());
    }

    private static Cell blank() {
        return new Cell.Blanks(List.of(List.of("")), false, 6);
    }
}
