package dawnkettle.sheet;

import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What is printed where no plan came out: the orders alone, by product and by van. It knows no time, no lot and no date. */
public final class OrdersOnlySheet {
    /** Its name within a day. */
    public static final String NAME = "orders-only";

    private final Ordered ordered;
    private final Desk desk;
    private final List<Given> given;

    private OrdersOnlySheet(Ordered ordered, Desk desk) {
        this.ordered = ordered;
        this.desk = desk;
        this.given = ordered.given();
    }

    public static Sheet of(Ordered ordered, Shop shop, SheetStyle style) {
        return new OrdersOnlySheet(ordered, new Desk(shop, style)).sheet();
    }

    /** The number by which a day's real sheets say to destroy it. */
    public static String number(LocalDate productionDate) {
        return "O-" + DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT).format(productionDate);
    }

    private Sheet sheet() {
        String title = desk.say(Word.ORDERS_ONLY_TITLE, number(ordered.forDay()));
        Masthead masthead = desk.plain(title, ordered.forDay(), ordered.madeAt())
                .withFirst(desk.say(Word.FALLBACK_FIRST))
                .withBanner(desk.say(Word.BANNER_ORDERS_ONLY))
                .withFoot(List.of(desk.say(Word.FOOT_SOY), desk.say(Word.FOOT_DATES), desk.say(Word.FOOT_CHILL)));
        Desk.Draft draft =
                new Desk.Draft(Sheet.Kind.FALLBACK, NAME, desk.style().paper(), ordered.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    private void write(Flow flow) {
        flow.add(new Block.Panel("", reasons(), true));
        if (given.isEmpty()) return;
        flow.add(Block.Heading.small(
                desk.say(Word.ORDERS_ONLY_TOTAL, ordered.book().packs())));
        flow.add(make());
        flow.add(Block.Heading.small(desk.say(Word.FALLBACK_RECIPES)));
        flow.add(new KettleTable(desk, Word.ORDERS_ONLY_KETTLES).of(given));
        flow.add(new Block.Plain(List.of(Cell.Phrase.plain(10, desk.say(Word.ORDERS_ONLY_HINT)))));
        flow.add(Block.Heading.small(desk.say(Word.FALLBACK_DELIVER)), new FallbackRounds(given, desk).table());
    }

    /** Why there is no plan, and what is therefore not here. */
    private List<String> reasons() {
        List<String> reasons = new ArrayList<>();
        reasons.add(desk.say(
                ordered.reason() == Ordered.Reason.TOO_LONG ? Word.ORDERS_ONLY_SLOW : Word.ORDERS_ONLY_MISTAKE));
        reasons.add(desk.say(Word.ORDERS_ONLY_LACKS, FallbackSheet.number(ordered.forDay())));
        if (!ordered.isClosed()) reasons.add(desk.say(Word.ORDERS_ONLY_OPEN));
        if (given.isEmpty()) reasons.add(desk.say(Word.ORDERS_ONLY_EMPTY));
        return reasons;
    }

    private Table make() {
        TreeMap<String, Integer> packs = given.stream()
                .collect(Collectors.groupingBy(Given::product, TreeMap::new, Collectors.summingInt(Given::packs)));
        List<Row> rows = new ArrayList<>();
        packs.forEach((product, count) -> rows.add(made(product, count)));
        List<Table.Column> columns = List.of(
                new Table.Column(desk.say(Word.PICK_PRODUCT), 100),
                new Table.Column(desk.say(Word.PICK_PACKS), 22),
                new Table.Column(desk.say(Word.PICK_CASES), 28),
                new Table.Column(desk.say(Word.FALLBACK_MASS), 30),
                new Table.Column("", 8));
        return new Table(columns, 5.6, List.of(Table.Section.plain(rows))).dense();
    }

    private Row made(String product, int packs) {
        return Row.of(
                Cell.text(desk.productName(product), Lettering.bold(10.5)),
                Cell.text(Integer.toString(packs), Lettering.bold(14)),
                Cell.text(desk.cases(product, packs).brief(), Lettering.plain(10)),
                Cell.text(desk.massOf(product, packs), Lettering.plain(10)),
                Cell.tick("", Lettering.plain(10)).small());
    }
}
