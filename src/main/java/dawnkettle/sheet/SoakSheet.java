package dawnkettle.sheet;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What the evening hand works from: which tub to fill with what, and when; the two numbers that matter large. */
public final class SoakSheet {
    private static final double LEAST_ROW_MM = 9.8;
    private static final double MOST_ROW_MM = 25;
    private static final double PADS_MM = 1.4;
    private static final int MANY = 10;
    private static final double SIDES_MM = 2.7;
    private static final double LARGEST_POINTS = 30;
    private static final double SUM_OF_SHARES = 186;
    private static final double BEANS_SHARE = 33;

    private final Desk desk;
    private final LocalDate day;
    private final List<PlannedSoak> tubs;
    private final Map<String, Instant> filled;
    private final SoakNotes notes;

    private SoakSheet(Desk desk, LocalDate day, List<PlannedSoak> tubs, Map<String, Instant> filled, SoakNotes notes) {
        this.desk = desk;
        this.day = day;
        this.tubs = tubs.stream()
                .sorted(Comparator.comparing(PlannedSoak::fillAt).thenComparing(PlannedSoak::tub))
                .toList();
        this.filled = filled;
        this.notes = notes;
    }

    static Sheet of(DayPlan plan, Desk desk) {
        Map<String, Instant> filled = new TreeMap<>();
        for (Frozen fact : plan.heading().frozen())
            if (fact.kind() == Frozen.Kind.TUB_FILLED) filled.put(fact.id(), fact.at());
        LocalDate day = plan.heading().productionDate();
        SoakSheet sheet = new SoakSheet(desk, day, plan.soaks(), filled, new SoakNotes(desk, List.of()));
        Masthead masthead = PlanHead.of(plan, desk, desk.say(Word.SOAK_TITLE));
        return sheet.sheet("soak", plan.heading().computedAt(), masthead);
    }

    /** The early tubs, which are filled before the book closes. */
    public static Sheet of(SoakCall call, Shop shop, SheetStyle style) {
        Desk desk = new Desk(shop, style);
        SoakSheet sheet =
                new SoakSheet(desk, call.productionDate(), call.tubs(), Map.of(), new SoakNotes(desk, call.notes()));
        Masthead plain = desk.plain(desk.say(Word.SOAK_CALL_TITLE), call.productionDate(), call.decidedAt());
        return sheet.sheet("soak-call", call.decidedAt(), plain.withBanner(desk.say(Word.SOAK_CALL_NOTE)));
    }

    private Sheet sheet(String name, Instant madeAt, Masthead masthead) {
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.SOAK, name, desk.style().paper(), madeAt);
        return desk.sheet(draft, masthead, this::write);
    }

    private void write(Flow flow) {
        if (tubs.isEmpty()) {
            flow.add(new Block.Panel(desk.say(Word.SOAK_NONE), notes.remarks(), false));
            return;
        }
        List<Block> below = notes.below(tubs);
        double taken = below.stream()
                .mapToDouble(block -> block.heightMm(flow.width(), desk.style().typeface()))
                .sum();
        flow.add(roomiest(flow, flow.roomMm() - taken));
        below.forEach(flow::add);
    }

    /** The highest rows with which all the tubs stand on the first page, within what is legible and what is sensible. */
    private Table roomiest(Flow flow, double room) {
        Typeface typeface = desk.style().typeface();
        for (double row = MOST_ROW_MM; row > LEAST_ROW_MM; row -= 0.5) {
            Table table = table(row, flow.width());
            if (table.heightMm(flow.width(), typeface) <= room) return table;
        }
        return table(LEAST_ROW_MM, flow.width());
    }

    private Table table(double rowMm, double width) {
        double points = points(rowMm, width);
        List<Table.Section> sections = new ArrayList<>();
        for (LocalDate fillDay : days()) {
            List<Row> rows = tubs.stream()
                    .filter(tub -> desk.dates().day(tub.fillAt()).equals(fillDay))
                    .map(tub -> row(tub, points, rowMm))
                    .toList();
            List<Row> head =
                    days().size() > 1 ? List.of(Row.shaded(12, desk.dates().full(fillDay))) : List.of();
            sections.add(new Table.Section(head, head, rows, false));
        }
        return new Table(columns(), rowMm, sections, Table.Stand.MIDDLE);
    }

    /** One size for all tubs: the largest at which the longest figure still fits its column. */
    private double points(double rowMm, double width) {
        double byHeight = (rowMm - PADS_MM) / Lettering.bold(1).lineMm();
        double column = width * BEANS_SHARE / SUM_OF_SHARES - SIDES_MM;
        double widest = tubs.stream()
                .map(tub -> desk.measures().figure(tub.beans(), Lettering.bold(10)))
                .mapToDouble(figure -> figure.widthMm(desk.style().typeface()))
                .max()
                .orElse(1);
        double points = Math.min(LARGEST_POINTS, Math.min(byHeight, 10 * (column - 1) / widest));
        return Math.floor(points * 2) / 2;
    }

    private List<LocalDate> days() {
        return tubs.stream()
                .map(tub -> desk.dates().day(tub.fillAt()))
                .distinct()
                .toList();
    }

    private List<Table.Column> columns() {
        String fillAt = days().size() > 1
                ? desk.say(Word.SOAK_FILL_AT)
                : desk.say(Word.SOAK_FILL_AT_ON, desk.dates().brief(days().get(0)));
        return List.of(
                new Table.Column(desk.say(Word.SOAK_TUB), 12),
                new Table.Column(fillAt, 30),
                new Table.Column(desk.say(Word.SOAK_BEANS), BEANS_SHARE),
                new Table.Column(desk.say(Word.SOAK_LOTS), 33),
                new Table.Column(desk.say(Word.SOAK_WATER_COLUMN), 18),
                new Table.Column(desk.say(Word.SOAK_GRIND), 23),
                new Table.Column(desk.say(Word.SOAK_WRITE), 37));
    }

    private Row row(PlannedSoak tub, double points, double rowMm) {
        Dates dates = desk.dates();
        return Row.of(
                Cell.text(tub.tub(), Lettering.bold(15)),
                Cell.text(dates.time(tub.fillAt()), Lettering.bold(points)),
                desk.measures().figure(tub.beans(), Lettering.bold(points)),
                lot(tub),
                pair(
                        desk.measures().water(tub.water()),
                        desk.first(Word.SOAK_WATER_AT, desk.measures().temperature(tub.waterTemperature()))),
                pair(
                        dates.timeFrom(tub.readyAt(), day),
                        desk.say(Word.SOAK_LATEST, dates.timeFrom(tub.latestGrindAt(), day))),
                written(tub, rowMm));
    }

    /** A figure and what belongs to it; smaller where many tubs share the page. */
    private Cell pair(String figure, String below) {
        boolean many = tubs.size() > MANY;
        return Cell.stack(Cell.Phrase.bold(many ? 10 : 11.5, figure), Cell.Phrase.plain(many ? 9 : 10, below));
    }

    private Cell lot(PlannedSoak tub) {
        String watch = bringsNewLot(tub) ? desk.say(Word.SOAK_WATCH) : "";
        if (tubs.size() > MANY)
            return Cell.stack(
                    Cell.Phrase.bold(9.5, watch.isEmpty() ? notes.sacks(tub) : watch),
                    Cell.Phrase.plain(9.5, lots(tub)));
        return Cell.stack(
                Cell.Phrase.bold(10.5, notes.sacks(tub)),
                Cell.Phrase.plain(9.5, lots(tub)),
                Cell.Phrase.bold(10, watch));
    }

    /** Whether it is the first tub of the day with a lot, after tubs of the same beans from another: it soaks otherwise. */
    private boolean bringsNewLot(PlannedSoak tub) {
        List<String> before = tubs.subList(0, tubs.indexOf(tub)).stream()
                .filter(one -> one.soakGroup().equals(tub.soakGroup()))
                .flatMap(one -> one.beanLots().stream())
                .toList();
        boolean mixed = before.isEmpty() && tub.beanLots().size() > 1;
        return mixed || !before.isEmpty() && !before.containsAll(tub.beanLots());
    }

    private String lots(PlannedSoak tub) {
        if (tub.beanLots().isEmpty()) return desk.first(Word.SOAK_NO_LOT);
        if (tub.beanLots().size() == 1)
            return desk.first(Word.SOAK_LOT, tub.beanLots().get(0));
        String rest = tub.beanLots().stream().skip(1).collect(Collectors.joining(", "));
        return desk.first(Word.SOAK_TWO_LOTS, tub.beanLots().get(0), rest);
    }

    private Cell written(PlannedSoak tub, double rowMm) {
        String ready = desk.say(Word.SOAK_READY_QUESTION);
        Instant at = filled.get(tub.tub());
        if (at != null)
            return Cell.stack(
                    Cell.Phrase.bold(11, desk.say(Word.SOAK_FILLED, desk.dates().time(at))),
                    Cell.Phrase.plain(10, Words.join(" ", List.of(ready, "________"))));
        List<String> when = List.of(desk.say(Word.AT));
        List<String> who = List.of(desk.say(Word.WHO));
        if (rowMm - PADS_MM >= 3 * Cell.Blanks.PITCH_MM)
            return new Cell.Blanks(List.of(when, who, List.of(ready)), true, Cell.Blanks.PITCH_MM);
        double pitch = Math.min(Cell.Blanks.PITCH_MM, (rowMm - PADS_MM) / 2);
        return new Cell.Blanks(List.of(List.of(when.get(0), who.get(0)), List.of(ready)), true, pitch);
    }
}
