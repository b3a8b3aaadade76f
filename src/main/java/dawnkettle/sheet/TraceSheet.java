package dawnkettle.sheet;

import dawnkettle.stock.RecallPage;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A recall on paper, for an inspector or for whoever rings the customers. */
public final class TraceSheet {
    private static final double POINTS = 8.5;

    /** What a column gets of the width: as long as its longest text, within reason. */
    private static final int NARROWEST = 12;

    private static final int WIDEST = 34;

    private final RecallPage page;
    private final Desk desk;
    private final Instant madeAt;

    private TraceSheet(RecallPage page, Desk desk, Instant madeAt) {
        this.page = page;
        this.desk = desk;
        this.madeAt = madeAt;
    }

    public static Sheet of(RecallPage page, SheetStyle style, Instant madeAt) {
        return new TraceSheet(page, new Desk(page.shop(), style), madeAt).sheet();
    }

    private Sheet sheet() {
        Masthead masthead = desk.plain(
                        "Trace: " + page.recall().subject(),
                        madeAt.atZone(desk.shop().house().zone()).toLocalDate(),
                        madeAt)
                .withFoot(List.of("Holds names and addresses: keep it as you keep your customers' papers."));
        Desk.Draft draft = new Desk.Draft(Sheet.Kind.TRACE, name(), desk.style().paper(), madeAt);
        return desk.sheet(draft, masthead, this::write);
    }

    private String name() {
        String words = page.recall().subject().replaceAll("[^A-Za-z0-9]+", "-");
        String name = "trace-" + words.toLowerCase(Locale.ROOT);
        return name.substring(0, Math.min(name.length(), 70));
    }

    private void write(Flow flow) {
        flow.add(new Block.Panel("", List.of(page.verdict()), false));
        for (RecallPage.Table table : page.tables()) {
            flow.add(new Block.Heading(table.title()));
            if (table.rows().isEmpty()) flow.add(new Block.Panel("", List.of("Nothing."), false));
            else flow.add(new Table(columns(table), 6, List.of(Table.Section.plain(rows(table)))));
        }
    }

    private static List<Table.Column> columns(RecallPage.Table table) {
        List<Table.Column> columns = new ArrayList<>();
        for (int i = 0; i < table.columns().size(); i++) {
            int at = i;
            int longest = table.rows().stream()
                    .mapToInt(row -> row.get(at).length())
                    .max()
                    .orElse(0);
            int width = Math.max(longest, table.columns().get(i).length());
            columns.add(new Table.Column(table.columns().get(i), Math.max(NARROWEST, Math.min(WIDEST, width))));
        }
        return columns;
    }

    private static List<Row> rows(RecallPage.Table table) {
        return table.rows().stream()
                .map(row -> Row.of(row.stream()
                        .map(cell -> Cell.text(cell, Lettering.plain(POINTS)))
                        .toArray(Cell[]::new)))
                .toList();
    }
}
