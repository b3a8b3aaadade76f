package dawnkettle.sheet;

import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Allergen;
import dawnkettle.shop.Step;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What the crew of one group of stations works from: its operations by time, what goes in, what waits for it. */
final class StationSheet {
    private static final double ROW_MM = 13.5;

    private final Day day;
    private final Desk desk;
    private final String group;
    private final List<PlannedOperation> operations;
    private final StationCells cells;

    StationSheet(Day day, String group, List<PlannedOperation> operations) {
        this.day = day;
        this.desk = day.desk();
        this.group = group;
        this.operations = operations;
        this.cells = new StationCells(day);
    }

    Sheet sheet(String name) {
        boolean packs =
                operations.stream().map(operation -> Work.of(operation.stage())).anyMatch(Work::packs);
        Masthead masthead = packs
                ? PlanHead.of(day.plan(), desk, title(), Word.FOOT_SOY, Word.FOOT_DATES, Word.FOOT_CHILL)
                : PlanHead.of(day.plan(), desk, title(), Word.FOOT_SOY);
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.RUN, name, desk.style().paper(), day.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    private String title() {
        return desk.say(Word.STATION_TITLE, group);
    }

    private void write(Flow flow) {
        flow.add(new Block.Panel(desk.say(Word.CAUTION), cautions(), true));
        flow.add(new Block.Gap(2));
        flow.add(new Table(columns(), ROW_MM, sections()));
    }

    private List<String> cautions() {
        return operations.stream()
                .map(operation -> Work.of(operation.stage()))
                .distinct()
                .sorted()
                .flatMap(work -> work.cautions().stream())
                .distinct()
                .map(desk::say)
                .toList();
    }

    private List<Table.Column> columns() {
        return List.of(
                new Table.Column(desk.say(Word.STATION_TIME), 23),
                new Table.Column(desk.say(Word.RUN_BATCH), 26),
                new Table.Column(desk.say(Word.STATION_WHAT), 34),
                new Table.Column(desk.say(Word.STATION_LOAD), 36),
                new Table.Column(desk.say(Word.STATION_THEN), 31),
                new Table.Column(desk.say(Word.STATION_WRITE), 36));
    }

    /** One section a calendar day, with a bar where the work does not lie wholly on the production day. */
    private List<Table.Section> sections() {
        List<LocalDate> days = operations.stream()
                .map(operation -> desk.dates().day(operation.start()))
                .distinct()
                .toList();
        boolean barred = !days.equals(List.of(day.date()));
        List<Table.Section> sections = new ArrayList<>();
        for (LocalDate one : days) {
            List<Row> head = barred ? List.of(Row.shaded(12, desk.dates().full(one))) : List.of();
            sections.add(new Table.Section(head, head, rows(one), false));
        }
        return sections;
    }

    private List<Row> rows(LocalDate one) {
        List<Washes.Wash> washes = new Washes(day).of(operations);
        List<Row> rows = new ArrayList<>();
        int hour = -1;
        for (PlannedOperation operation : operations) {
            if (!desk.dates().day(operation.start()).equals(one)) continue;
            for (Washes.Wash wash : washes) if (wash.before().equals(operation)) rows.add(wash(wash));
            int startHour = desk.dates().hour(operation.start());
            boolean newHour = hour >= 0 && startHour != hour;
            rows.add(newHour ? row(operation).looking(Row.Look.NEW_HOUR) : row(operation));
            hour = startHour;
        }
        return rows;
    }

    private Row wash(Washes.Wash wash) {
        String station = day.stationName(wash.before().station());
        if (wash.gone().isEmpty())
            return Row.across(
                    Row.Look.SHADED,
                    Cell.text(
                            desk.say(
                                    Word.STATION_WASH,
                                    station,
                                    wash.minutes(),
                                    wash.before().batch()),
                            Lettering.bold(11)));
        String gone = wash.gone().stream().map(Allergen::word).collect(Collectors.joining(", "));
        return Row.bar(
                11.5,
                desk.say(
                        Word.STATION_WASH_ALLERGEN,
                        station,
                        wash.minutes(),
                        wash.before().batch(),
                        gone));
    }

    private Row row(PlannedOperation operation) {
        PlannedBatch batch = day.plan().batch(operation.batch());
        return Row.of(
                Cell.stack(
                        Cell.Phrase.bold(17, desk.dates().time(operation.start())),
                        Cell.Phrase.plain(
                                10, desk.say(Word.STATION_UNTIL, desk.dates().time(operation.end())))),
                Cell.stack(
                        Cell.Phrase.bold(16, batch.id()),
                        Cell.Phrase.plain(9.5, batch.lot().toString())),
                Cell.stack(
                        Cell.Phrase.bold(12.5, day.stepName(operation)),
                        Cell.Phrase.plain(10, day.recipe(batch).name()),
                        Cell.Phrase.plain(10, place(operation))),
                cells.load(operation, batch),
                cells.next(operation, batch),
                Cell.blanks(cells.prompts(operation)));
    }

    private String place(PlannedOperation operation) {
        String name = day.stationName(operation.station());
        boolean several = day.station(operation.station())
                .map(station -> station.places() > 1)
                .orElse(false);
        return several ? desk.say(Word.STATION_PLACE, name, operation.place()) : name;
    }

    /** What is to be held or reached, and for how long. */
    static String target(Desk desk, Step step) {
        String minutes = desk.first(Word.MINUTES, step.minutes());
        return step.target()
                .map(target -> desk.first(Word.STATION_TARGET, desk.measures().temperature(target), minutes))
                .orElse(minutes);
    }
}
