package dawnkettle.sheet;

import dawnkettle.plan.Allocation;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What is fetched in all, by product and lot. */
final class PickTotals {
    private final Day day;
    private final Desk desk;

    PickTotals(Day day) {
        this.day = day;
        this.desk = day.desk();
    }

    Table table() {
        List<Table.Column> columns = List.of(
                new Table.Column("", 6.6),
                new Table.Column(desk.say(Word.PICK_PACKS), 13),
                new Table.Column(desk.say(Word.PICK_CASES), 18),
                new Table.Column(desk.say(Word.PICK_LOT), 30),
                new Table.Column(desk.say(Word.PICK_BEST_BEFORE), 25));
        TreeMap<String, List<Allocation>> byProduct = day.plan().allocation().stream()
                .collect(Collectors.groupingBy(Allocation::product, TreeMap::new, Collectors.toList()));
        List<Table.Section> sections = new ArrayList<>();
        byProduct.forEach((product, lines) -> sections.add(section(product, lines)));
        return new Table(columns, 5.6, sections).dense();
    }

    private Table.Section section(String product, List<Allocation> lines) {
        int packs = lines.stream().mapToInt(Allocation::packs).sum();
        String name = desk.productName(product);
        String head = desk.first(Word.PICK_PRODUCT_TOTAL, name, packs, desk.cases(desk.count(lines)));
        TreeMap<LotCode, List<Allocation>> byLot =
                lines.stream().collect(Collectors.groupingBy(Allocation::lot, TreeMap::new, Collectors.toList()));
        List<Row> rows = byLot.entrySet().stream()
                .map(entry -> row(product, entry.getKey(), entry.getValue()))
                .toList();
        Row again = Row.shaded(10.5, desk.say(Word.CONTINUED, name));
        return new Table.Section(
                List.of(Row.shaded(10.5, head)), List.of(again), rows, rows.size() <= PickSheet.KEPT_ROWS);
    }

    private Row row(String product, LotCode lot, List<Allocation> lines) {
        int packs = lines.stream().mapToInt(Allocation::packs).sum();
        return Row.of(
                Cell.tick("", Lettering.plain(10)).small(),
                Cell.text(Integer.toString(packs), Lettering.bold(12)),
                Cell.text(desk.count(lines).brief(), Lettering.plain(10)),
                Cell.stack(
                        Cell.Phrase.bold(10.5, lot.toString()),
                        Cell.Phrase.plain(9, fromStock(product, lot, lines.get(0)))),
                Cell.text(
                        day.bestBefore(lot, product).map(desk.dates()::onLabel).orElse(""), Lettering.plain(10)));
    }

    private String fromStock(String product, LotCode lot, Allocation line) {
        if (!line.fromStock()) return "";
        boolean expected = day.stock(lot, product).map(StockLot::expected).orElse(false);
        return desk.say(expected ? Word.PICK_EXPECTED : Word.PICK_STOCK);
    }
}
