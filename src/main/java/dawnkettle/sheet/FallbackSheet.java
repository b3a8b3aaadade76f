package dawnkettle.sheet;

import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** The sheet that lies in the tray every afternoon, so that a dead computer never means an empty morning. */
public final class FallbackSheet {
    /** Packing may run over midnight, and a lot may be packed the morning after. */
    private static final int PACKING_DAYS = 2;

    private final Fallback fallback;
    private final Desk desk;

    private FallbackSheet(Fallback fallback, Desk desk) {
        this.fallback = fallback;
        this.desk = desk;
    }

    public static Sheet of(Fallback fallback, Shop shop, SheetStyle style) {
        return new FallbackSheet(fallback, new Desk(shop, style)).sheet();
    }

    /** The number by which a day's real sheets say to destroy it. */
    public static String number(LocalDate productionDate) {
        return "F-" + DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT).format(productionDate);
    }

    private Sheet sheet() {
        String title = desk.say(Word.FALLBACK_TITLE, number(fallback.forDay()));
        Masthead masthead = desk.plain(title, fallback.forDay(), fallback.madeAt())
                .withFirst(desk.say(Word.FALLBACK_FIRST))
                .withBanner(desk.say(Word.FALLBACK_BANNER, desk.dates().full(fallback.lastWeek())))
                .withFoot(List.of(desk.say(Word.FOOT_SOY), desk.say(Word.FOOT_DATES), desk.say(Word.FOOT_CHILL)));
        Desk.Draft draft =
                new Desk.Draft(Sheet.Kind.FALLBACK, "fallback", desk.style().paper(), fallback.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    private void write(Flow flow) {
        if (fallback.lines().isEmpty()) {
            flow.add(new Block.Panel("", List.of(desk.say(Word.FALLBACK_EMPTY)), true));
            return;
        }
        flow.add(Block.Heading.small(desk.say(Word.FALLBACK_MAKE)), make());
        flow.add(new Block.Plain(List.of(
                Cell.Phrase.plain(10, desk.say(Word.FALLBACK_NOTE)),
                Cell.Phrase.plain(10, desk.say(Word.FALLBACK_DATES_NOTE)))));
        flow.add(
                Block.Heading.small(desk.say(Word.FALLBACK_RECIPES)),
                new KettleTable(desk, Word.FALLBACK_KETTLES_OF).of(fallback.given()));
        flow.add(
                Block.Heading.small(desk.say(Word.FALLBACK_DELIVER)),
                new FallbackRounds(fallback.given(), desk).table());
    }

    private TreeMap<String, List<Fallback.Line>> byProduct() {
        return fallback.lines().stream()
                .collect(Collectors.groupingBy(Fallback.Line::product, TreeMap::new, Collectors.toList()));
    }

    /** What to make of each product, and the dates to write on its undated labels. */
    private Table make() {
        List<Row> rows = new ArrayList<>();
        byProduct().forEach((product, lines) -> rows.add(made(product, lines)));
        List<Table.Column> columns = new ArrayList<>(List.of(
                new Table.Column(desk.say(Word.PICK_PRODUCT), 52),
                new Table.Column(desk.say(Word.FALLBACK_LAST_WEEK), 14),
                new Table.Column(desk.say(Word.FALLBACK_STANDING), 16),
                new Table.Column(desk.say(Word.PICK_PACKS), 14),
                new Table.Column(desk.say(Word.PICK_CASES), 15),
                new Table.Column(desk.say(Word.FALLBACK_MASS), 20)));
        for (int i = 0; i < PACKING_DAYS; i++)
            columns.add(new Table.Column(
                    desk.say(
                            Word.FALLBACK_IF_PACKED,
                            desk.dates().brief(fallback.forDay().plusDays(i))),
                    24.5));
        columns.add(new Table.Column("", 8));
        return new Table(columns, 5.6, List.of(Table.Section.plain(rows))).dense();
    }

    private Row made(String product, List<Fallback.Line> lines) {
        int packs = lines.stream().mapToInt(Fallback.Line::packs).sum();
        List<Cell> cells = new ArrayList<>(List.of(
                Cell.text(desk.productName(product), Lettering.bold(10.5)),
                plain(lines.stream().mapToInt(Fallback.Line::lastWeekPacks).sum()),
                plain(lines.stream().mapToInt(Fallback.Line::standingPacks).sum()),
                Cell.text(Integer.toString(packs), Lettering.bold(14)),
                Cell.text(desk.cases(product, packs).brief(), Lettering.plain(10)),
                Cell.text(desk.massOf(product, packs), Lettering.plain(10))));
        for (int i = 0; i < PACKING_DAYS; i++)
            cells.add(date(product, fallback.forDay().plusDays(i)));
        cells.add(Cell.tick("", Lettering.plain(10)).small());
        return new Row(cells, Row.Look.PLAIN);
    }

    private Cell date(String product, LocalDate packed) {
        return desk.shop()
                .findProduct(product)
                .map(found -> desk.dates().onLabel(found.keeping().bestBefore(packed)))
                .map(said -> Cell.text(said, Lettering.bold(10.5)))
                .orElse(Cell.empty());
    }

    private static Cell plain(int packs) {
        return Cell.text(Integer.toString(packs), Lettering.plain(10));
    }
}
