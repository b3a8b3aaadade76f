package dawnkettle.sheet;

import dawnkettle.plan.Allocation;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.shop.Keeping;
import dawnkettle.shop.Product;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What may be sold to whoever rings at four in the morning: packs promised to nobody, by lot, and room to write to whom. */
final class FreeSheet {
    private static final int CALLS = 8;

    private final Day day;
    private final Desk desk;

    FreeSheet(Day day) {
        this.day = day;
        this.desk = day.desk();
    }

    /** @param cold when its packs are cold; empty where they lie in the cold room already */
    record Free(String product, LotCode lot, int packs, LocalDate bestBefore, Optional<Instant> cold) {}

    Sheet sheet() {
        Masthead masthead = PlanHead.of(
                day.plan(), desk, desk.say(Word.FREE_TITLE), Word.FOOT_SOY, Word.FOOT_DATES, Word.FOOT_CHILL);
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.FREE, "free", desk.style().paper(), day.madeAt());
        return desk.sheet(draft, masthead, this::write);
    }

    /** Of the day's lots and of those in stock what no line of the book gets; first expired first. */
    static List<Free> of(Day day) {
        List<Free> free = new ArrayList<>();
        for (StockLot lot : day.plan().stock())
            free.add(new Free(lot.product(), lot.lot(), lot.packs(), lot.bestBefore(), Optional.empty()));
        for (PlannedBatch batch : day.plan().batches())
            for (PlannedBatch.Filled filled : batch.packs())
                day.bestBefore(batch.lot(), filled.product())
                        .ifPresent(until -> free.add(
                                new Free(filled.product(), batch.lot(), filled.packs(), until, cold(day, batch))));
        return free.stream()
                .map(one -> new Free(
                        one.product(), one.lot(), one.packs() - promised(day, one), one.bestBefore(), one.cold()))
                .filter(one -> one.packs() > 0)
                .sorted(Comparator.comparing(Free::bestBefore).thenComparing(Free::lot))
                .toList();
    }

    private static int promised(Day day, Free one) {
        return day.plan().allocation().stream()
                .filter(line -> line.lot().equals(one.lot()) && line.product().equals(one.product()))
                .mapToInt(Allocation::packs)
                .sum();
    }

    private static Optional<Instant> cold(Day day, PlannedBatch batch) {
        return day.plan().operationsOf(batch.id()).stream()
                .map(PlannedOperation::end)
                .max(Comparator.naturalOrder());
    }

    private void write(Flow flow) {
        List<Free> free = of(day);
        flow.add(new Block.Panel("", List.of(desk.say(free.isEmpty() ? Word.FREE_NONE : Word.FREE_NOTE)), false));
        if (!free.isEmpty()) flow.add(new Table(columns(), 9.5, sections(free)));
        flow.add(new Block.Heading(desk.say(Word.FREE_CALLS)), calls());
    }

    private List<Table.Column> columns() {
        return List.of(
                new Table.Column(desk.say(Word.FREE_LEFT), 18),
                new Table.Column(desk.say(Word.PICK_CASES), 36),
                new Table.Column(desk.say(Word.PICK_LOT), 32),
                new Table.Column(desk.say(Word.FREE_READY), 26),
                new Table.Column(desk.say(Word.FREE_LAST), 26),
                new Table.Column(desk.say(Word.FREE_GIVEN), 52));
    }

    private List<Table.Section> sections(List<Free> free) {
        TreeMap<String, List<Free>> byProduct =
                free.stream().collect(Collectors.groupingBy(Free::product, TreeMap::new, Collectors.toList()));
        List<Table.Section> sections = new ArrayList<>();
        byProduct.forEach((product, lots) -> {
            String name = desk.productName(product);
            sections.add(new Table.Section(
                    List.of(Row.shaded(11.5, name)),
                    List.of(Row.shaded(11.5, desk.say(Word.CONTINUED, name))),
                    lots.stream().map(this::row).toList(),
                    lots.size() <= PickSheet.KEPT_ROWS));
        });
        return sections;
    }

    private Row row(Free one) {
        return Row.of(
                Cell.text(Integer.toString(one.packs()), Lettering.bold(15)),
                Cell.text(desk.cases(desk.cases(one.product(), one.packs())), Lettering.plain(10.5)),
                Cell.text(one.lot().toString(), Lettering.bold(11)),
                Cell.text(
                        one.cold()
                                .map(at -> desk.dates().timeFrom(at, day.date()))
                                .orElse(desk.say(Word.FREE_READY_NOW)),
                        Lettering.plain(10.5)),
                Cell.text(lastDay(one), Lettering.plain(10.5)),
                new Cell.Blanks(List.of(List.of("")), false, 6));
    }

    /** After it a customer would not have the days that the product is sold with. */
    private String lastDay(Free one) {
        int least = desk.shop()
                .findProduct(one.product())
                .map(Product::keeping)
                .map(Keeping::leastDaysLeft)
                .orElse(0);
        return desk.dates().brief(one.bestBefore().minusDays(least));
    }

    private Table calls() {
        List<Table.Column> columns = List.of(
                new Table.Column(desk.say(Word.AT), 20),
                new Table.Column(desk.say(Word.FREE_CUSTOMER), 62),
                new Table.Column(desk.say(Word.PICK_PRODUCT), 46),
                new Table.Column(desk.say(Word.PICK_PACKS), 18),
                new Table.Column(desk.say(Word.PICK_LOT), 26),
                new Table.Column(desk.say(Word.FREE_VAN), 18));
        Row blank = new Row(Collections.nCopies(6, new Cell.Field()), Row.Look.PLAIN);
        return new Table(columns, 9, List.of(Table.Section.plain(Collections.nCopies(CALLS, blank))));
    }
}
