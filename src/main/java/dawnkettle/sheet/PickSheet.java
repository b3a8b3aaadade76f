package dawnkettle.sheet;

import dawnkettle.plan.Allocation;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedRoute;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What the packer works from: totals by product and lot to check against, then van by van, last stop first. */
final class PickSheet {
    /** A section of no more rows is kept on one page. */
    static final int KEPT_ROWS = 4;

    private final Day day;
    private final Desk desk;
    private final List<Load> loads;

    PickSheet(Day day, List<Load> loads) {
        this.day = day;
        this.desk = day.desk();
        this.loads = loads;
    }

    Sheet sheet() {
        Masthead masthead = PlanHead.of(day.plan(), desk, desk.say(Word.PICK_TITLE), Word.FOOT_SOY, Word.FOOT_CHILL);
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.PICK, "pick", desk.style().paper(), day.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    private void write(Flow flow) {
        List<String> shortages = shortages();
        if (!shortages.isEmpty()) flow.add(new Block.Panel(desk.say(Word.PICK_SHORT_TITLE), shortages, true));
        if (day.plan().allocation().isEmpty()) {
            flow.add(new Block.Panel("", List.of(desk.say(Word.PICK_NONE)), false));
            return;
        }
        flow.inColumns(2);
        flow.add(new Block.Heading(desk.say(Word.PICK_TOTALS)), new PickTotals(day).table());
        flow.add(new Block.Panel("", totals(), true));
        flow.add(new Block.Heading(desk.say(Word.PICK_ROUTES)), routes());
    }

    private List<String> shortages() {
        return loads.stream()
                .flatMap(load -> load.stops().stream())
                .flatMap(stop -> stop.shortOrders().stream())
                .map(this::shortage)
                .toList();
    }

    private String shortage(PlannedOrder one) {
        String whom = one.line().route() + ", " + desk.customerName(one.line().customer()) + ": ";
        return Words.join("", List.of(whom, desk.shortOf(Word.PICK_SHORT, one)));
    }

    /** Of all vans and of each, to count against. */
    private List<String> totals() {
        List<String> totals = new ArrayList<>();
        Desk.CasesAndLoose all = desk.count(day.plan().allocation());
        int packs = day.plan().allocation().stream().mapToInt(Allocation::packs).sum();
        List<Load> filled = loads.stream().filter(load -> load.packs() > 0).toList();
        totals.add(desk.say(Word.PICK_TOTAL, packs, desk.cases(all), filled.size()));
        for (Load load : filled)
            totals.add(desk.say(Word.PICK_VAN_TOTAL, load.route(), load.packs(), load.boxes(desk)));
        return totals;
    }

    private Table routes() {
        List<Table.Column> columns = List.of(
                new Table.Column("", 6.6),
                new Table.Column(desk.say(Word.PICK_PACKS), 10.8),
                new Table.Column(desk.say(Word.PICK_CASES), 13.2),
                new Table.Column(desk.say(Word.PICK_PRODUCT), 38.6),
                new Table.Column(desk.say(Word.PICK_LOT), 23.8));
        List<Table.Section> sections = new ArrayList<>();
        for (Load load : loads) routeSections(load, sections);
        return new Table(columns, 5.4, sections).dense();
    }

    /** A section a customer, so that a customer stays together; the van's bar stands over the first, its sum below the last. */
    private void routeSections(Load load, List<Table.Section> sections) {
        List<Load.Stop> stops = new ArrayList<>(load.served());
        Collections.reverse(stops);
        for (int i = 0; i < stops.size(); i++) {
            Load.Stop stop = stops.get(i);
            List<Row> head = new ArrayList<>(i == 0 ? van(load) : List.of());
            head.add(Row.shaded(10.5, customer(stop)));
            Row again = Row.shaded(10.5, desk.say(Word.CONTINUED, load.route() + "  " + customer(stop)));
            List<Row> rows =
                    new ArrayList<>(stop.lines().stream().map(this::line).toList());
            if (i == stops.size() - 1) rows.addAll(sum(load));
            sections.add(
                    new Table.Section(head, List.of(again), rows, stop.lines().size() <= KEPT_ROWS));
        }
    }

    private String customer(Load.Stop stop) {
        return desk.first(Word.ROUTE_STOP, stopNumber(stop), desk.customerName(stop.customer()));
    }

    static String stopNumber(Load.Stop stop) {
        return stop.number() == Integer.MAX_VALUE ? "–" : Integer.toString(stop.number());
    }

    private List<Row> van(Load load) {
        List<Row> rows = new ArrayList<>();
        rows.add(Row.bar(12, desk.say(Word.PICK_ROUTE, load.route(), load.name(desk), leaves(load), loadFrom(load))));
        if (load.lateMinutes() > 0) rows.add(Row.bar(12, desk.say(Word.LATE, load.lateMinutes())));
        int boxes = load.boxes(desk);
        int holds = load.holds(desk).orElse(Integer.MAX_VALUE);
        Word word = boxes > holds ? Word.PICK_ROUTE_OVER : Word.PICK_ROUTE_LOAD;
        String text = desk.say(word, load.served().size(), boxes, holds == Integer.MAX_VALUE ? "?" : holds);
        rows.add(Row.across(
                Row.Look.PLAIN, Cell.text(text, boxes > holds ? Lettering.bold(10.5) : Lettering.plain(10))));
        return rows;
    }

    /** What the packer counts and signs when the van is packed. */
    private List<Row> sum(Load load) {
        String total = desk.say(Word.PICK_VAN_TOTAL, load.route(), load.packs(), load.boxes(desk));
        return List.of(
                Row.across(Row.Look.NEW_HOUR, Cell.text(total, Lettering.bold(11))),
                Row.across(
                        Row.Look.PLAIN,
                        new Cell.Blanks(
                                List.of(
                                        List.of(desk.say(Word.PICK_COUNTED), desk.say(Word.AT)),
                                        List.of(desk.say(Word.PICK_SIGN))),
                                false,
                                8.5)));
    }

    private String leaves(Load load) {
        return load.planned()
                .map(PlannedRoute::departs)
                .map(desk.dates()::dayAndTime)
                .orElse(desk.dates().brief(load.day()));
    }

    private String loadFrom(Load load) {
        return load.planned().map(PlannedRoute::packBy).map(desk.dates()::time).orElse("?");
    }

    private Row line(Allocation line) {
        return Row.of(
                Cell.tick("", Lettering.plain(10)).small(),
                Cell.text(Integer.toString(line.packs()), Lettering.bold(12)),
                Cell.text(desk.cases(line.product(), line.packs()).brief(), Lettering.plain(10)),
                Cell.text(desk.productName(line.product()), Lettering.plain(10)),
                Cell.text(line.lot().toString(), Lettering.plain(9)));
    }
}
