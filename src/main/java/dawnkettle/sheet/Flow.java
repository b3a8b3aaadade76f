package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.List;

/** Fills pages from top to bottom; a heading never stands without what it heads, nor a row alone overleaf. */
final class Flow {
    static final double MARGIN_MM = 12;

    /** A last row is not left alone overleaf where at least this many stand before it. */
    private static final int ROWS_TO_PART_FROM = 3;

    private final Masthead masthead;
    private final PaperSize paper;
    private final Typeface typeface;
    private final Words words;
    private final double top;
    private final double bottom;
    private final List<Canvas> canvases = new ArrayList<>();
    private double y;

    Flow(Masthead masthead, PaperSize paper, Typeface typeface, Words words) {
        this.masthead = masthead;
        this.paper = paper;
        this.typeface = typeface;
        this.words = words;
        this.top = MARGIN_MM + masthead.headMm(width(), typeface);
        this.bottom = paper.heightMm() - MARGIN_MM - masthead.footMm(width(), typeface);
        turn();
    }

    double width() {
        return paper.widthMm() - 2 * MARGIN_MM;
    }

    /** What is still free on this page. */
    double roomMm() {
        return bottom - y;
    }

    void turn() {
        canvases.add(new Canvas(typeface));
        y = top;
    }

    void add(Block block) {
        double height = block.heightMm(width(), typeface);
        if (height > roomMm() && y > top) turn();
        block.draw(canvas(), take(height));
    }

    /** A heading, and under it a table of which at least two rows stand on the same page. */
    void add(Block.Heading heading, Table table) {
        if (table.sections().isEmpty()) return;
        double needed = heading.heightMm(width(), typeface)
                + start(table, table.sections().get(0), true);
        if (needed > roomMm() && y > top) turn();
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
        if (heightMm > roomMm() && y > top) turn();
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
                    head, new Frame(MARGIN_MM, MARGIN_MM, width(), 0), words.say(Word.PAGE_OF, i + 1, canvases.size()));
            masthead.drawFoot(canvases.get(i), new Frame(MARGIN_MM, bottom, width(), 0));
            pages.add(canvases.get(i).under(head));
        }
        return pages;
    }

    private boolean mustTurn(Table table, Table.Section section, boolean headed) {
        if (y <= top) return false;
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
        section.head().forEach(row -> row(table, row));
        List<Row> left = section.rows();
        for (boolean turned = false; !left.isEmpty(); turned = true) {
            int fitting = fitting(table, left);
            if (fitting == 0 && turned)
                throw new IllegalStateException(masthead.title() + ": a row is higher than the page");
            left.subList(0, fitting).forEach(row -> row(table, row));
            left = left.subList(fitting, left.size());
            if (left.isEmpty()) return;
            turn();
            heading(table);
            section.headAgain().forEach(row -> row(table, row));
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

    private void row(Table table, Row row) {
        table.draw(canvas(), row, take(table.heightMm(row, width(), typeface)));
    }

    private Frame take(double height) {
        Frame frame = new Frame(MARGIN_MM, y, width(), height);
        y += height;
        return frame;
    }
}
