package dawnkettle.sheet;

import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What is in the cold room and the store by the book, with room to write what is really there. */
public final class CountSheet {
    private static final int EMPTY_ROWS = 6;

    private final Desk desk;
    private final Stocktake stocktake;

    private CountSheet(Desk desk, Stocktake stocktake) {
        this.desk = desk;
        this.stocktake = stocktake;
    }

    /** What the book says on an afternoon. */
    public record Stocktake(LocalDate day, Instant madeAt, List<StockLot> packs, List<BeanLot> bought) {
        public Stocktake {
            packs = List.copyOf(packs);
            bought = List.copyOf(bought);
        }
    }

    public static Sheet of(Stocktake stocktake, Shop shop, SheetStyle style) {
        return new CountSheet(new Desk(shop, style), stocktake).sheet();
    }

    private Sheet sheet() {
        Masthead masthead = desk.plain(desk.say(Word.COUNT_TITLE), stocktake.day(), stocktake.madeAt())
                .withFoot(List.of(desk.say(Word.FOOT_SOY), desk.say(Word.FOOT_CHILL)));
        Desk.Draft draft =
                new Desk.Draft(Sheet.Kind.COUNT, "count", desk.style().paper(), stocktake.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    private void write(Flow flow) {
        List<String> notes = new ArrayList<>();
        if (stocktake.packs().isEmpty()) notes.add(desk.say(Word.COUNT_NONE));
        notes.add(desk.say(Word.COUNT_NOTE));
        flow.add(new Block.Panel("", notes, false));
        flow.add(new Table(columns(Word.PICK_BEST_BEFORE), 10, packSections()));
        if (!stocktake.bought().isEmpty())
            flow.add(
                    new Block.Heading(desk.say(Word.COUNT_MATERIALS)),
                    new Table(columns(Word.PICK_PRODUCT), 10, List.of(bought())));
    }

    private List<Table.Column> columns(Word second) {
        return List.of(
                new Table.Column(desk.say(Word.PICK_LOT), 60),
                new Table.Column(desk.say(second), 46),
                new Table.Column(desk.say(Word.COUNT_BOOK), 30),
                new Table.Column(desk.say(Word.COUNT_COUNTED), 52));
    }

    private List<Table.Section> packSections() {
        TreeMap<String, List<StockLot>> byProduct = stocktake.packs().stream()
                .sorted(Comparator.comparing(StockLot::bestBefore).thenComparing(StockLot::lot))
                .collect(Collectors.groupingBy(StockLot::product, TreeMap::new, Collectors.toList()));
        List<Table.Section> sections = new ArrayList<>();
        byProduct.forEach((product, lots) -> {
            String name = desk.productName(product) + "  ·  " + product;
            sections.add(new Table.Section(
                    List.of(Row.shaded(12, name)),
                    List.of(Row.shaded(12, desk.say(Word.CONTINUED, name))),
                    lots.stream().map(this::row).toList(),
                    true));
        });
        List<Row> empty = new ArrayList<>();
        for (int i = 0; i < EMPTY_ROWS; i++) empty.add(Row.of(blank(), blank(), Cell.empty(), blank()));
        sections.add(new Table.Section(List.of(Row.shaded(12, desk.say(Word.COUNT_MORE))), List.of(), empty, true));
        return sections;
    }

    private Row row(StockLot lot) {
        return Row.of(
                Cell.text(lot.lot().toString(), Lettering.bold(12)),
                Cell.text(desk.dates().onLabel(lot.bestBefore()), Lettering.plain(11.5)),
                Cell.text(Integer.toString(lot.packs()), Lettering.plain(12)),
                blank());
    }

    private Table.Section bought() {
        return Table.Section.plain(stocktake.bought().stream()
                .map(lot -> Row.of(
                        Cell.text(lot.lot(), Lettering.bold(12)),
                        Cell.text(
                                desk.shop()
                                        .findMaterial(lot.material())
                                        .map(material -> material.name())
                                        .orElse(lot.material()),
                                Lettering.plain(11)),
                        Cell.text(desk.measures().mass(lot.left()), Lettering.plain(12)),
                        blank()))
                .toList());
    }

    private static Cell blank() {
        return new Cell.Field();
    }
}
