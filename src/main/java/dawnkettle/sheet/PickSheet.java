package dawnkettle.sheet;

import dawnkettle.plan.Allocation;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.stock.LotCode;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What the packer works from: totals by product and lot to check against, then van by van, last stop first. */
final class PickSheet {
    /** A section of no more rows is kept on one page. */
    static final int KEPT_ROWS = 6;

    private final Day day;
    private final Desk desk;
    private final List<Load> loads;

    PickSheet(Day day, List<Load> loads) {
        this.day = day;
        this.desk = day.desk();
        this.loads = loads;
    }

    Sheet sheet() {
        Masthead masthead = PlanHead.of(
                day.plan(), desk, desk.say(Word.PICK_TITLE), Word.FOOT_SOY, Word.FOOT_DATES, Word.FOOT_CHILL);
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
        flow.add(new Block.Heading(desk.say(Word.PICK_TOTALS)), totals());
        flow.add(new Block.Panel("", List.of(total()), false));
        flow.add(new Block.Heading(desk.say(Word.PICK_ROUTES)), routes());
    }

    private List<String> shortages() {
        return loads.stream()
                .flatMap(load -> load.stops().stream())
                .flatMap(stop -> stop.shortOrders().stream())
                .map(one ->
                        one.line().route() + ", " + desk.customerName(one.line().customer()) + ": "
                                + desk.say(
                                        Word.PICK_SHORT,
                                        one.declinedPacks(),
                                        one.line().packs(),
                                        desk.productName(one.line().product()),
                                        one.reason()))
                .toList();
    }

    private String total() {
        Desk.CasesAndLoose all = count(day.plan().allocation());
        int packs = day.plan().allocation().stream().mapToInt(Allocation::packs).sum();
        long vans = loads.stream().filter(load -> load.packs() > 0).count();
        return desk.say(Word.PICK_TOTAL, packs, desk.cases(all), vans);
    }

    /** Cases and loose packs as the customers' lines need them, which is what leaves the bench. */
    private Desk.CasesAndLoose count(List<Allocation> lines) {
        return lines.stream()
                .map(line -> desk.cases(line.product(), line.packs()))
                .reduce(Desk.CasesAndLoose.NONE, Desk.CasesAndLoose::plus);
    }

    private Table totals() {
        List<Table.Column> columns = List.of(
                new Table.Column(desk.say(Word.PICK_LOT), 62),
                new Table.Column(desk.say(Word.PICK_BEST_BEFORE), 36),
                new Table.Column(desk.say(Word.PICK_PACKS), 24),
                new Table.Column(desk.say(Word.PICK_CASES), 44),
                new Table.Column(desk.say(Word.PICK_CHECK), 22));
        TreeMap<String, List<Allocation>> byProduct = day.plan().allocation().stream()
                .collect(Collectors.groupingBy(Allocation::product, TreeMap::new, Collectors.toList()));
        List<Table.Section> sections = new ArrayList<>();
        byProduct.forEach((product, lines) -> sections.add(productSection(product, lines)));
        return new Table(columns, 8.5, sections);
    }

    private Table.Section productSection(String product, List<Allocation> lines) {
        Desk.CasesAndLoose all = count(lines);
        int packs = lines.stream().mapToInt(Allocation::packs).sum();
        String head = desk.productName(product) + "  ·  " + product;
        Row row = Row.shaded(12, desk.say(Word.PICK_PRODUCT_TOTAL, head, packs, desk.cases(all)));
        Row again = Row.shaded(12, desk.say(Word.CONTINUED, head));
        TreeMap<LotCode, List<Allocation>> byLot =
                lines.stream().collect(Collectors.groupingBy(Allocation::lot, TreeMap::new, Collectors.toList()));
        List<Row> rows = byLot.entrySet().stream()
                .map(entry -> lotRow(product, entry.getKey(), entry.getValue()))
                .toList();
        return new Table.Section(List.of(row), List.of(again), rows, rows.size() <= KEPT_ROWS);
    }

    private Row lotRow(String product, LotCode lot, List<Allocation> lines) {
        int packs = lines.stream().mapToInt(Allocation::packs).sum();
        return Row.of(
                Cell.stack(
                        Cell.Phrase.bold(12, lot.toString()),
                        Cell.Phrase.plain(10, fromStock(product, lot, lines.get(0)))),
                Cell.text(bestBefore(product, lot), Lettering.plain(11)),
                Cell.text(Integer.toString(packs), Lettering.bold(14)),
                Cell.text(desk.cases(count(lines)), Lettering.plain(11.5)),
                Cell.tick("", Lettering.plain(11)));
    }

    private String fromStock(String product, LotCode lot, Allocation line) {
        if (!line.fromStock()) return "";
        boolean expected =
                day.stock(lot, product).map(stock -> stock.expected()).orElse(false);
        return desk.say(expected ? Word.PICK_EXPECTED : Word.PICK_STOCK);
    }

    private String bestBefore(String product, LotCode lot) {
        return day.bestBefore(lot, product).map(desk.dates()::onLabel).orElse("");
    }

    private Table routes() {
        List<Table.Column> columns = List.of(
                new Table.Column(desk.say(Word.PICK_PRODUCT), 76),
                new Table.Column(desk.say(Word.PICK_LOT), 38),
                new Table.Column(desk.say(Word.PICK_PACKS), 20),
                new Table.Column(desk.say(Word.PICK_CASES), 40),
                new Table.Column(desk.say(Word.PICK_CHECK), 18));
        List<Table.Section> sections = new ArrayList<>();
        for (Load load : loads) routeSections(load, sections);
        return new Table(columns, 8.5, sections);
    }

    /** A section a customer, so that a customer stays on one page; the van's bar stands over the first. */
    private void routeSections(Load load, List<Table.Section> sections) {
        List<Row> van = van(load);
        List<Load.Stop> stops = new ArrayList<>(load.served());
        java.util.Collections.reverse(stops);
        boolean first = true;
        for (Load.Stop stop : stops) {
            Row customer = Row.shaded(11.5, customer(stop));
            List<Row> head = new ArrayList<>(first ? van : List.of());
            head.add(customer);
            Row again = Row.shaded(11.5, desk.say(Word.CONTINUED, load.route() + "  " + customer(stop)));
            sections.add(new Table.Section(
                    head,
                    List.of(again),
                    stop.lines().stream().map(this::line).toList(),
                    stop.lines().size() <= KEPT_ROWS));
            first = false;
        }
    }

    private String customer(Load.Stop stop) {
        return desk.say(Word.ROUTE_STOP, stopNumber(stop), desk.customerName(stop.customer()));
    }

    static String stopNumber(Load.Stop stop) {
        return stop.number() == Integer.MAX_VALUE ? "–" : Integer.toString(stop.number());
    }

    private List<Row> van(Load load) {
        List<Row> rows = new ArrayList<>();
        rows.add(Row.bar(13, desk.say(Word.PICK_ROUTE, load.route(), load.name(desk), leaves(load), loadFrom(load))));
        if (load.lateMinutes() > 0) rows.add(Row.bar(12, desk.say(Word.LATE, load.lateMinutes())));
        int boxes = load.boxes(desk);
        int holds = load.holds(desk).orElse(Integer.MAX_VALUE);
        Word word = boxes > holds ? Word.PICK_ROUTE_OVER : Word.PICK_ROUTE_LOAD;
        String text = desk.say(word, load.served().size(), boxes, holds == Integer.MAX_VALUE ? "?" : holds);
        rows.add(Row.across(Row.Look.PLAIN, Cell.text(text, boxes > holds ? Lettering.bold(11) : Lettering.plain(11))));
        return rows;
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
                Cell.text(desk.productName(line.product()), Lettering.plain(11.5)),
                Cell.text(line.lot().toString(), Lettering.plain(11)),
                Cell.text(Integer.toString(line.packs()), Lettering.bold(14)),
                Cell.text(desk.cases(desk.cases(line.product(), line.packs())), Lettering.plain(11)),
                Cell.tick("", Lettering.plain(11)));
    }
}
