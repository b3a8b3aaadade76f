package dawnkettle.sheet;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.IfCard;
import dawnkettle.plan.IfCard.Loss.Kind;
import dawnkettle.shop.Shop;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What then, if a batch, a hand or a station is lost: one page on the wall; what hurts first, what does not in a line each. */
public final class IfSheet {
    private static final Lettering HARMLESS_ID = Lettering.bold(10);
    private static final Lettering HARMLESS = Lettering.plain(9);

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

    /** With all that is known where one page holds it; else customers are counted, not named. */
    private Sheet sheet() {
        Sheet whole = sheet(new IfCells(desk, false));
        return whole.pages().size() == 1 ? whole : sheet(new IfCells(desk, true));
    }

    private Sheet sheet(IfCells cells) {
        Masthead masthead = PlanHead.of(day.plan(), desk, desk.say(Word.IF_TITLE), Word.FOOT_SOY, Word.FOOT_CHILL);
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.IF, "if", desk.style().paper(), day.madeAt());
        return desk.sheet(draft, masthead, flow -> write(flow, cells));
    }

    private void write(Flow flow, IfCells cells) {
        flow.add(new Block.Panel("", List.of(desk.say(card.rows().isEmpty() ? Word.IF_NONE : Word.IF_NOTE)), false));
        List<Table.Section> hurting = hurting(cells);
        if (!hurting.isEmpty()) flow.add(new Table(columns(), 0, hurting).dense());
        List<List<Cell>> harmless = card.rows().stream()
                .filter(IfCard.Row::isHarmless)
                .map(row -> harmless(row, cells))
                .toList();
        if (harmless.isEmpty()) return;
        flow.add(
                Block.Heading.small(desk.say(Word.IF_HARMLESS)),
                new Table(harmlessColumns(), 0, List.of(Table.Section.plain(inPairs(harmless)))).dense());
    }

    private List<Table.Column> columns() {
        return List.of(
                new Table.Column(desk.say(Word.IF_LOST), 37),
                new Table.Column(desk.say(Word.IF_THEN), 46),
                new Table.Column(desk.say(Word.IF_STANDS_IN), 48),
                new Table.Column(desk.say(Word.IF_FIRST), 55));
    }

    private List<Table.Section> hurting(IfCells cells) {
        List<Table.Section> sections = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            List<Row> rows = card.rows().stream()
                    .filter(row -> row.loss().kind() == kind && !row.isHarmless())
                    .map(cells::hurting)
                    .toList();
            String head = desk.say(heading(kind));
            if (!rows.isEmpty())
                sections.add(new Table.Section(
                        List.of(Row.shaded(11, head)),
                        List.of(Row.shaded(11, desk.say(Word.CONTINUED, head))),
                        rows,
                        rows.size() <= 2));
        }
        return sections;
    }

    private static Word heading(Kind kind) {
        return switch (kind) {
            case BATCH -> Word.IF_BATCH;
            case HAND -> Word.IF_HAND;
            case STATION -> Word.IF_STATION;
        };
    }

    private static List<Table.Column> harmlessColumns() {
        return List.of(
                new Table.Column("", 12),
                new Table.Column("", 51),
                new Table.Column("", 30),
                new Table.Column("", 12),
                new Table.Column("", 51),
                new Table.Column("", 30));
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
        String id = cells.id(row.loss());
        return List.of(
                Cell.text(id, HARMLESS_ID),
                Cell.text(cells.name(row.loss()), id.isEmpty() ? Lettering.bold(HARMLESS.points()) : HARMLESS),
                Cell.text(cells.harmless(row), HARMLESS));
    }
}
