package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.List;

/** Fills pages from top to bottom; a heading never stands without what it heads, nor a row alone overleaf. */
final class Flow {
    static final double MARGIN_MM = 12;

    /** A last row is not left alone overleaf where at least this many stand before it. */
    private static final int ROWS_TO_PART_FROM = 3;

    private final Masthead masthead;
    /** Between columns: what is marked as changed has its mark there. */
    private static final double GUTTER_MM = 7;

    /** Columns begin on a new page where less than this is free. */
    private static final double LEAST_COLUMN_MM = 70;

    private final PaperSize paper;
    private final Typeface typeface;
    private final Words words;
    private final Rows.Said said;
    private final double top;
    private final double bottom;
    private final List<Canvas> canvases = new ArrayList<>();
    private int columns = 1;
    private int column;
    private double columnTop;
    private double deepest;
    private double y;

    Flow(Masthead masthead, PaperSize paper, Desk desk, Rows.Said said) {
        this.masthead = masthead;
        this.paper = paper;
        this.typeface = desk.style().typeface();
        this.words = desk.words();
        this.said = said;
        this.top = MARGIN_MM + masthead.headMm(width(), typeface);
        this.bottom = paper.heightMm() - MARGIN_MM - masthead.footMm(width(), typeface);
        turnPage();
    }

    /** Of a column. */
    double width() {
        return (fullWidth() - (columns - 1) * GUTTER_MM) / columns;
    }

    private double fullWidth() {
        return paper.widthMm() - 2 * MARGIN_MM;
    }

    /** What is added from here on stands in so many columns, side by side, filled one after the other. */
    void inColumns(int count) {
        if (columns > 1) y = deepest;
        columns = count;
        column = 0;
        if (count > 1 && roomMm() < LEAST_COLUMN_MM) turnPage();
        columnTop = y;
        deepest = y;
    }

    /** What is still free on this page. */
    double roomMm() {
        return bottom - y;
    }

    /** To the next column, or the next page. */
    void turn() {
        if (column + 1 < columns) {
            column++;
            y = columnTop;
        } else turnPage();
    }

    private void turnPage() {
        canvases.add(new Canvas(typeface));
        column = 0;
        y = top;
        columnTop = top;
        deepest = top;
    }

    private boolean isAtTop() {
        return y <= columnTop;
    }

    void add(Block block) {
        double height = block.heightMm(width(), typeface);
        if (height > roomMm() && y > top) turn();
        int from = canvas().size();
        Frame frame = take(height);
        block.draw(canvas(), frame);
        if (block.marksChange(said.isNew(canvas().textFrom(from)))) ChangeMark.draw(canvas(), frame);
    }

    /** A heading with what it heads. */
    void addTogether(Block.Heading heading, Block under) {
        double needed = heading.heightMm(width(), typeface) + under.heightMm(width(), typeface);
        if (needed > roomMm() && !isAtTop()) turn();
        add(heading);
        add(under);
    }

    /** A heading, and under it a table of which at least two rows stand on the same page. */
    void add(Block.Heading heading, Table table) {
        if (table.sections().isEmpty()) return;
        double needed = heading.heightMm(width(), typeface)
                + start(table, table.sections().get(0), true);
        if (needed > roomMm() && !isAtTop()) turn();
        add(heading);
        add(table);
    }

    void add(Table table) {
        boolean headed = false;
        for (Table.Section section : table.sections()) {
            if (mustTurn(table, section, headed)) {
                turn();
                headed = false;
            }
            if (!headed) heading(table);
            headed = true;
            rows(table, section);
        }
    }

    /** Content of this size, to be drawn by the caller; on a new page where this one has not the room. */
    Frame claim(double heightMm) {
        if (heightMm > roomMm() && !isAtTop()) turn();
        return take(heightMm);
    }

    Canvas canvas() {
        return canvases.get(canvases.size() - 1);
    }

    List<Page> pages() {
        List<Page> pages = new ArrayList<>();
        for (int i = 0; i < canvases.size(); i++) {
            Canvas head = new Canvas(typeface);
            masthead.draw(
                    head,
                    new Frame(MARGIN_MM, MARGIN_MM, fullWidth(), 0),
                    words.first(Word.PAGE_OF, i + 1, canvases.size()));
            masthead.drawFoot(canvases.get(i), new Frame(MARGIN_MM, bottom, fullWidth(), 0));
            pages.add(canvases.get(i).under(head));
        }
        return pages;
    }

    private boolean mustTurn(Table table, Table.Section section, boolean headed) {
        if (isAtTop()) return false;
        double least = start(table, section, !headed);
        double all = (headed ? 0 : table.headingMm(width(), typeface))
                + table.heightMm(section.head(), width(), typeface)
                + table.heightMm(section.rows(), width(), typeface);
        boolean wouldFitOverleaf = all <= bottom - top - table.headingMm(width(), typeface);
        return least > roomMm() || section.whole() && wouldFitOverleaf && all > roomMm();
    }

    /** The least of a section that may stand at the foot of a page: its head and two rows, or three where that is all. */
    private double start(Table table, Table.Section section, boolean withHeading) {
        int rows = section.rows().size();
        List<Row> first = section.rows().subList(0, rows <= ROWS_TO_PART_FROM ? rows : 2);
        return (withHeading ? table.headingMm(width(), typeface) : 0)
                + table.heightMm(section.head(), width(), typeface)
                + table.heightMm(first, width(), typeface);
    }

    private void rows(Table table, Table.Section section) {
        String named = said(table, section.headAgain());
        if (!named.isEmpty()) said.named(named);
        section.head().forEach(row -> row(table, row, named));
        List<Row> left = section.rows();
        for (boolean turned = false; !left.isEmpty(); turned = true) {
            int fitting = fitting(table, left);
            if (fitting == 0 && turned)
                throw new IllegalStateException(masthead.title() + ": a row is higher than the page");
            left.subList(0, fitting).forEach(row -> row(table, row, named));
            left = left.subList(fitting, left.size());
            if (left.isEmpty()) return;
            turn();
            heading(table);
            section.headAgain().forEach(row -> draw(table, row));
        }
    }

    private int fitting(Table table, List<Row> rows) {
        int count = 0;
        double height = 0;
        while (count < rows.size()) {
            height += table.heightMm(rows.get(count), width(), typeface);
            if (height > roomMm() + 1e-6) break;
            count++;
        }
        if (count == rows.size() - 1 && count >= ROWS_TO_PART_FROM) count--;
        while (count > 0 && count < rows.size() && rows.get(count - 1).announces()) count--;
        return count;
    }

    private void heading(Table table) {
        double height = table.headingMm(width(), typeface);
        if (height > 0) table.drawHeading(canvas(), take(height));
    }

    /** A row, marked where the sheet that this one replaces did not have it in the section of that name. */
    private void row(Table table, Row row, String section) {
        int from = canvas().size();
        Frame frame = draw(table, row);
        String text = canvas().textFrom(from);
        if (section.isEmpty() && row.cells().size() > 1) said.named(text.split(Canvas.BETWEEN, 2)[0]);
        if (said.isNew(section + Canvas.BETWEEN + text)) ChangeMark.draw(canvas(), frame);
    }

    private Frame draw(Table table, Row row) {
        Frame frame = take(table.heightMm(row, width(), typeface));
        table.draw(canvas(), row, frame);
        return frame;
    }

    /** What rows would say. */
    private String said(Table table, List<Row> rows) {
        Canvas aside = new Canvas(typeface);
        rows.forEach(row -> table.draw(aside, row, new Frame(0, 0, width(), table.heightMm(row, width(), typeface))));
        return aside.textFrom(0);
    }

    private Frame take(double height) {
        Frame frame = new Frame(MARGIN_MM + column * (width() + GUTTER_MM), y, width(), height);
        y += height;
        deepest = Math.max(deepest, y);
        return frame;
    }
}
