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

    /** One sheet for the van, a page or more a stop that gets something, in the order of the round. */
    Sheet sheet(String name) {
        List<Page> pages = new ArrayList<>();
        for (Load.Stop stop : load.served())
            pages.addAll(paper.together(pages(stop, Word.NOTE_FOR_CUSTOMER), pages(stop, Word.NOTE_FOR_SHOP)));
        String title = desk.first(Word.NOTE_TITLE, load.route()) + ", "
                + Words.first(desk.dates().full(load.day()));
        Imprint imprint = new Imprint(title, desk.words().tag(), desk.style().paper(), day.madeAt());
        return new Sheet(Sheet.Kind.DELIVERY, name, imprint, pages);
    }

    private List<Page> pages(Load.Stop stop, Word copy) {
        Masthead masthead = masthead(stop, copy);
        Rows.Said aside = Rows.first().of("note");
        Flow flow = new Flow(masthead, paper.half(), desk, aside);
        if (copy == Word.NOTE_FOR_CUSTOMER) flow.canvas().bookmark(desk.customerName(stop.customer()), Flow.MARGIN_MM);
        write(stop, flow);
        return flow.pages();
    }

    private Masthead masthead(Load.Stop stop, Word copy) {
        String number = NUMBER.format(load.day()) + "-" + stop.customer();
        String shop = desk.shop().house().name() + ", "
                + String.join(", ", desk.shop().house().address());
        Masthead.Name name = new Masthead.Name(
                desk.say(Word.NOTE_TITLE, number), desk.dates().full(load.day()), desk.say(copy), shop, "");
        return new Masthead("", name, "", List.of(desk.say(Word.FOOT_SOY), desk.say(Word.FOOT_CHILL)));
    }

    private void write(Load.Stop stop, Flow flow) {
        flow.add(new Block.Plain(to(stop)));
        Optional<NotePrices> prices = prices(stop);
        TreeMap<String, List<Allocation>> byProduct = stop.lines().stream()
                .collect(Collectors.groupingBy(Allocation::product, TreeMap::new, Collectors.toList()));
        List<Row> rows = new ArrayList<>();
        for (Allocation line : stop.lines()) rows.add(row(line, stop, prices));
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
                Cell.Phrase.bold(13, desk.customerName(stop.customer())),
                Cell.Phrase.plain(10, desk.say(Word.NOTE_TO, address, van + leaves, PickSheet.stopNumber(stop))));
    }

    private List<Table.Column> columns(boolean prices) {
        List<Table.Column> columns = new ArrayList<>(List.of(
                new Table.Column(desk.say(Word.PICK_PACKS), 14),
                new Table.Column(desk.say(Word.PICK_PRODUCT), prices ? 48 : 66),
                new Table.Column(desk.say(Word.PICK_CASES), 20),
                new Table.Column(desk.say(Word.PICK_LOT), 27),
                new Table.Column(desk.say(Word.PICK_BEST_BEFORE), 27)));
        if (prices) columns.add(new Table.Column(desk.say(Word.NOTE_PRICE), 18));
        if (prices) columns.add(new Table.Column(desk.say(Word.NOTE_SUM), 20));
        columns.add(new Table.Column(desk.say(Word.NOTE_RETURNED), 18));
        return columns;
    }

    private Row row(Allocation line, Load.Stop stop, Optional<NotePrices> prices) {
        String best = day.bestBefore(line.lot(), line.product())
                .map(desk.dates()::onLabel)
                .orElse("");
        List<Cell> cells = new ArrayList<>(List.of(
                Cell.text(Integer.toString(line.packs()), Lettering.bold(12)),
                Cell.text(desk.productName(line.product()), Lettering.plain(10.5)),
                Cell.text(desk.cases(line.product(), line.packs()).brief(), Lettering.plain(10.5)),
                Cell.text(line.lot().toString(), Lettering.plain(10.5)),
                Cell.text(best, Lettering.plain(10.5))));
        prices.ifPresent(worth -> cells.addAll(worth.cells(stop.customer(), line)));
        cells.add(new Cell.Blanks(List.of(List.of("")), false, 5));
        return new Row(cells, Row.Look.PLAIN);
    }

    private List<Cell.Phrase> below(
            Load.Stop stop, TreeMap<String, List<Allocation>> byProduct, Optional<NotePrices> prices) {
        List<Cell.Phrase> below = new ArrayList<>();
        String total = desk.say(Word.NOTE_TOTAL, stop.packs(), stop.boxes(desk));
        String sum = prices.map(worth -> worth.total(stop)).orElse(desk.say(Word.NOTE_PLAIN));
        below.add(Cell.Phrase.bold(10.5, Words.join("  ", List.of(total, sum))));
        stop.shortOrders().forEach(order -> below.add(Cell.Phrase.bold(10.5, desk.shortOf(Word.NOTE_SHORT, order))));
        below.add(Cell.Phrase.plain(10, desk.say(Word.NOTE_CONTAINERS, containers(byProduct))));
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
                7.6));
    }
}
