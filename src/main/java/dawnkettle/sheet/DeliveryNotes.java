package dawnkettle.sheet;

import dawnkettle.plan.Allocation;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The delivery notes of a van, each twice: packs, lots, dates, containers; prices where the customer wants them. */
final class DeliveryNotes {
    private static final DateTimeFormatter NUMBER = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT);

    private final Day day;
    private final Desk desk;
    private final Load load;
    private final NotePaper paper;

    DeliveryNotes(Day day, Load load) {
        this.day = day;
        this.desk = day.desk();
        this.load = load;
        this.paper = new NotePaper(desk.style().paper());
    }

    /** One sheet for the van, a quarter of a page or more a stop that gets something, twice. */
    Sheet sheet(String name) {
        List<NotePaper.Copies> notes = new ArrayList<>();
        for (Load.Stop stop : load.served()) notes.addAll(copies(stop));
        String title = desk.first(Word.NOTE_TITLE, load.route()) + ", "
                + Words.first(desk.dates().full(load.day()));
        Imprint imprint = new Imprint(title, desk.words().tag(), desk.style().paper(), day.madeAt());
        return new Sheet(Sheet.Kind.DELIVERY, name, imprint, paper.pages(notes));
    }

    private List<NotePaper.Copies> copies(Load.Stop stop) {
        List<Page> customers = pages(stop, Word.NOTE_FOR_CUSTOMER);
        List<Page> shops = pages(stop, Word.NOTE_FOR_SHOP);
        return IntStream.range(0, customers.size())
                .mapToObj(i -> new NotePaper.Copies(customers.get(i), shops.get(i)))
                .toList();
    }

    private List<Page> pages(Load.Stop stop, Word copy) {
        Masthead masthead = masthead(stop, copy);
        Rows.Said aside = Rows.first().of("note");
        Flow flow = new Flow(masthead, paper.quarter(), desk, aside);
        if (copy == Word.NOTE_FOR_CUSTOMER) flow.canvas().bookmark(desk.customerName(stop.customer()), Flow.MARGIN_MM);
        write(stop, flow);
        return flow.pages();
    }

    private Masthead masthead(Load.Stop stop, Word copy) {
        String number = NUMBER.format(load.day()) + "-" + stop.customer();
        String shop = desk.shop().house().name() + ", "
                + String.join(", ", desk.shop().house().address());
        Masthead.Name name = new Masthead.Name(
                desk.say(Word.NOTE_TITLE, number), desk.dates().brief(load.day()), desk.say(copy), shop, "");
        return new Masthead("", name, dating(), List.of(desk.say(Word.NOTE_FOOT)), Masthead.Size.QUARTER);
    }

    /** In few words: what is to be done about it stands on the sheets of the house. */
    private String dating() {
        return desk.style().tray().dating() == SheetStyle.Dating.NOT_CONFIRMED ? desk.say(Word.NOTE_NOT_CONFIRMED) : "";
    }

    private void write(Load.Stop stop, Flow flow) {
        flow.add(new Block.Plain(to(stop)));
        Optional<NotePrices> prices = prices(stop);
        TreeMap<String, List<Allocation>> byProduct = stop.lines().stream()
                .collect(Collectors.groupingBy(Allocation::product, TreeMap::new, Collectors.toList()));
        List<Row> rows = new ArrayList<>();
        for (Allocation line : stop.lines()) {
            rows.addAll(day.warning(line.lot()));
            rows.add(row(line, stop, prices));
        }
        flow.add(new Table(columns(prices.isPresent()), 6, List.of(Table.Section.plain(rows))).dense());
        flow.add(new Block.Plain(below(stop, byProduct, prices)));
        flow.add(new Table(List.of(new Table.Column("", 1)), 0, List.of(Table.Section.plain(List.of(signed()))))
                .dense());
    }

    /** What a pack costs, where the customer wants prices on notes. */
    private Optional<NotePrices> prices(Load.Stop stop) {
        return desk.shop()
                .findCustomer(stop.customer())
                .filter(Customer::pricesOnNotes)
                .map(customer -> new NotePrices(desk, load.day()));
    }

    private List<Cell.Phrase> to(Load.Stop stop) {
        String van = load.route() + (load.name(desk).isEmpty() ? "" : " " + load.name(desk));
        String leaves = load.planned()
                .map(PlannedRoute::departs)
                .map(desk.dates()::time)
                .map(time -> " " + time)
                .orElse("");
        String address =
                desk.shop().findCustomer(stop.customer()).map(Customer::address).orElse("");
        return List.of(
                Cell.Phrase.bold(12, desk.customerName(stop.customer())),
                Cell.Phrase.plain(9, desk.say(Word.NOTE_TO, address, van + leaves, PickSheet.stopNumber(stop))));
    }

    private List<Table.Column> columns(boolean prices) {
        List<Table.Column> columns = new ArrayList<>(List.of(
                new Table.Column(desk.say(Word.PICK_PACKS), 12.5),
                new Table.Column(desk.say(Word.PICK_PRODUCT), prices ? 46 : 52),
                new Table.Column(desk.say(Word.PICK_CASES), 13)));
        if (prices)
            columns.add(new Table.Column(
                    Words.join("\n", List.of(desk.say(Word.NOTE_PRICE), desk.say(Word.NOTE_SUM))), 14));
        columns.add(new Table.Column(desk.say(Word.NOTE_RETURNED), prices ? 11 : 13));
        return columns;
    }

    private Row row(Allocation line, Load.Stop stop, Optional<NotePrices> prices) {
        String best = day.bestBefore(line.lot(), line.product())
                .map(desk.dates()::onLabel)
                .orElse("");
        List<Cell> cells = new ArrayList<>(List.of(
                Cell.text(Integer.toString(line.packs()), Lettering.bold(12)),
                Cell.stack(
                        Cell.Phrase.plain(10, desk.productName(line.product())),
                        Cell.Phrase.plain(9, line.lot() + "  " + best)),
                Cell.text(desk.cases(line.product(), line.packs()).brief(), Lettering.plain(10))));
        prices.ifPresent(worth -> cells.add(worth.cell(stop.customer(), line)));
        cells.add(new Cell.Blanks(List.of(List.of("")), false, 7));
        return new Row(cells, Row.Look.PLAIN);
    }

    private List<Cell.Phrase> below(
            Load.Stop stop, TreeMap<String, List<Allocation>> byProduct, Optional<NotePrices> prices) {
        List<Cell.Phrase> below = new ArrayList<>();
        String total = desk.say(Word.NOTE_TOTAL, stop.packs(), stop.boxes(desk));
        String sum = prices.map(worth -> worth.total(stop)).orElse(desk.say(Word.NOTE_PLAIN));
        below.add(Cell.Phrase.bold(10, Words.join("  ", List.of(total, sum))));
        stop.shortOrders().forEach(order -> below.add(Cell.Phrase.bold(10, desk.shortOf(Word.NOTE_SHORT, order))));
        below.add(Cell.Phrase.plain(9, desk.say(Word.NOTE_CONTAINERS, containers(byProduct))));
        return below;
    }

    /** Those that come back, with what each costs until then. */
    private String containers(TreeMap<String, List<Allocation>> byProduct) {
        List<String> out = new ArrayList<>();
        byProduct.forEach((code, lines) -> desk.shop()
                .findProduct(code)
                .filter(product -> product.packing().deposit().minor() > 0)
                .ifPresent(product -> out.add(container(product, lines))));
        return out.isEmpty() ? desk.say(Word.NOTE_NO_CONTAINERS) : Words.join("; ", out);
    }

    private String container(Product product, List<Allocation> lines) {
        int packs = lines.stream().mapToInt(Allocation::packs).sum();
        return desk.say(
                Word.NOTE_CONTAINER, packs, product.name(), product.packing().deposit());
    }

    private Row signed() {
        return Row.of(new Cell.Blanks(
                List.of(
                        List.of(desk.say(Word.ROUTE_BACK), desk.say(Word.NOTE_ARRIVED)),
                        List.of(desk.say(Word.NOTE_RETURNS)),
                        List.of(desk.say(Word.ROUTE_SIGN), desk.say(Word.AT))),
                false,
                7));
    }
}
