package dawnkettle.sheet;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.IfCard;
import dawnkettle.plan.IfCard.Loss.Kind;
import dawnkettle.sheet.IfCells.Closeness;
import dawnkettle.shop.Shop;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What then, if a batch, a hand or a station is lost: two sides of one sheet on the wall, a third on the largest days. A row a
 * batch, a line a hand or a station, and what does no harm in a word each.
 */
public final class IfSheet {
    /** Front and back of what hangs on the wall. */
    private static final int WANTED_PAGES = 2;

    /** Beyond it the least hurting losses are counted, not named. */
    private static final int MOST_PAGES = 3;

    private static final Lettering HARMLESS_ID = Lettering.bold(10);
    private static final Lettering HARMLESS = Lettering.plain(9.5);

    private final Day day;
    private final Desk desk;
    private final IfCard card;

    private IfSheet(Day day, IfCard card) {
        this.day = day;
        this.desk = day.desk();
        this.card = card;
    }

    public static Sheet of(IfCard card, DayPlan plan, Shop shop, SheetStyle style) {
        return new IfSheet(new Day(plan, new Desk(shop, style)), card).sheet();
    }

    /** As roomy as its pages let it be; where even the closest has too many, what hurts least is counted, not shown. */
    private Sheet sheet() {
        for (int pages = WANTED_PAGES; pages <= MOST_PAGES; pages++)
            for (Closeness closeness : Closeness.values()) {
                Sheet sheet = sheet(closeness, Integer.MAX_VALUE);
                if (sheet.pages().size() <= pages) return sheet;
            }
        int most = (int) card.rows().stream().filter(row -> !row.isHarmless()).count();
        Sheet sheet;
        do {
            most = most * 9 / 10;
            sheet = sheet(Closeness.LINES, most);
        } while (most > 0 && sheet.pages().size() > MOST_PAGES);
        return sheet;
    }

    private Sheet sheet(Closeness closeness, int most) {
        Masthead masthead = PlanHead.of(day.plan(), desk, desk.say(Word.IF_TITLE), Word.FOOT_SOY, Word.FOOT_CHILL);
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.IF, "if", desk.style().paper(), day.madeAt());
        return desk.sheet(draft, masthead, flow -> write(flow, new IfCells(day, closeness), most));
    }

    private void write(Flow flow, IfCells cells, int most) {
        flow.add(new Block.Plain(
                List.of(Cell.Phrase.plain(10, desk.say(card.rows().isEmpty() ? Word.IF_NONE : Word.IF_NOTE)))));
        Set<IfCard.Row> shown = shown(most);
        List<Row> batches = rows(Kind.BATCH, shown).stream().map(cells::batch).toList();
        if (!batches.isEmpty()) flow.add(new Table(batchColumns(), 0, List.of(Table.Section.plain(batches))).dense());
        List<Table.Section> others = new ArrayList<>();
        section(Word.IF_HAND, rows(Kind.HAND, shown).stream().map(cells::other).toList(), others);
        section(
                Word.IF_STATION,
                rows(Kind.STATION, shown).stream().map(cells::other).toList(),
                others);
        if (!others.isEmpty()) {
            flow.add(new Block.Gap(2));
            flow.add(new Table(otherColumns(), 0, others).dense());
        }
        long more = card.rows().stream().filter(row -> !row.isHarmless()).count() - shown.size();
        if (more > 0) flow.add(new Block.Panel("", List.of(desk.say(Word.IF_MORE_ROWS, more)), true));
        harmless(flow, cells);
    }

    /** Those that hurt, or as many of them as there is room for, those with most packs short first. */
    private Set<IfCard.Row> shown(int most) {
        return new HashSet<>(card.rows().stream()
                .filter(row -> !row.isHarmless())
                .sorted(Comparator.comparingInt(IfCard.Row::shortPacks).reversed())
                .limit(most)
                .toList());
    }

    private List<IfCard.Row> rows(Kind kind, Set<IfCard.Row> shown) {
        return card.rows().stream()
                .filter(row -> row.loss().kind() == kind && shown.contains(row))
                .toList();
    }

    private List<Table.Column> batchColumns() {
        return List.of(
                new Table.Column(desk.say(Word.IF_BATCH), 13),
                new Table.Column("", 35),
                new Table.Column(desk.say(Word.IF_SHORT), 13),
                new Table.Column(desk.say(Word.IF_OF_WHAT), 44),
                new Table.Column(desk.say(Word.IF_VANS), 35),
                new Table.Column(desk.say(Word.IF_STANDS_IN), 46));
    }

    private List<Table.Column> otherColumns() {
        return List.of(
                new Table.Column("", 47),
                new Table.Column(desk.say(Word.IF_SHORT), 15),
                new Table.Column(desk.say(Word.IF_VANS), 42),
                new Table.Column(desk.say(Word.IF_THEN), 82));
    }

    private void section(Word head, List<Row> rows, List<Table.Section> sections) {
        if (rows.isEmpty()) return;
        String said = desk.say(head);
        sections.add(new Table.Section(
                List.of(Row.shaded(11, said)),
                List.of(Row.shaded(11, desk.say(Word.CONTINUED, said))),
                rows,
                rows.size() <= 2));
    }

    /** Batches with what stands in for them, the rest by name; on the closest card all by name. */
    private void harmless(Flow flow, IfCells cells) {
        List<IfCard.Row> harmless =
                card.rows().stream().filter(IfCard.Row::isHarmless).toList();
        if (harmless.isEmpty()) return;
        List<List<Cell>> table = new ArrayList<>();
        List<String> named = new ArrayList<>();
        for (IfCard.Row row : harmless)
            if (row.loss().kind() != Kind.BATCH) named.add(cells.name(row.loss()));
            else if (cells.isClosest()) named.add(row.loss().id());
            else table.add(harmless(row, cells));
        Block.Heading heading = Block.Heading.small(desk.say(Word.IF_HARMLESS));
        Block.Plain names = new Block.Plain(List.of(Cell.Phrase.plain(10, Words.join("; ", named))));
        if (!table.isEmpty())
            flow.add(heading, new Table(harmlessColumns(), 0, List.of(Table.Section.plain(inPairs(table)))).dense());
        else flow.addTogether(heading, names);
        if (!table.isEmpty() && !named.isEmpty()) flow.add(names);
    }

    private static List<Table.Column> harmlessColumns() {
        return List.of(
                new Table.Column("", 12),
                new Table.Column("", 47),
                new Table.Column("", 34),
                new Table.Column("", 12),
                new Table.Column("", 47),
                new Table.Column("", 34));
    }

    /** Two losses a row: the first half of them on the left, the others beside it. */
    private static List<Row> inPairs(List<List<Cell>> all) {
        int left = (all.size() + 1) / 2;
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < left; i++) {
            List<Cell> cells = new ArrayList<>(all.get(i));
            cells.addAll(left + i < all.size() ? all.get(left + i) : Collections.nCopies(3, Cell.empty()));
            rows.add(new Row(cells, Row.Look.PLAIN));
        }
        return rows;
    }

    private static List<Cell> harmless(IfCard.Row row, IfCells cells) {
        return List.of(
                Cell.text(row.loss().id(), HARMLESS_ID),
                Cell.text(cells.recipe(row.loss()), HARMLESS),
                Cell.text(cells.whence(row.help()), HARMLESS));
    }
}
