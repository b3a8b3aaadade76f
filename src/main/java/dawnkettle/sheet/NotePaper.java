package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Notes on quarters of paper, the customer's copy beside the shop's: cut once along and once across, the upper pile laid on
 * the lower is in the order of the round.
 */
final class NotePaper {
    private static final double DASH_MM = 3;

    /** What is left free round a quarter: office printers reach to about 5 mm of the edge (common practice, no source). */
    static final double EDGE_MM = 6;

    /** A quarter is laid out as on a sheet with the usual margin, and put where this margin is cut away. */
    private static final double CUT_MM = Flow.MARGIN_MM - EDGE_MM;

    private final PaperSize paper;

    NotePaper(PaperSize paper) {
        this.paper = paper;
    }

    /** One page of a note, in two copies. */
    record Copies(Page customers, Page shops) {}

    /** What one copy is laid out on. */
    PaperSize quarter() {
        return new PaperSize(paper.widthMm() / 2 + 2 * CUT_MM, paper.heightMm() / 2 + 2 * CUT_MM);
    }

    /** Two notes on a page: the first half of them above, the second below. */
    List<Page> pages(List<Copies> notes) {
        int above = (notes.size() + 1) / 2;
        List<Page> pages = new ArrayList<>();
        for (int i = 0; i < above; i++)
            pages.add(page(notes.subList(i, i + 1), notes.subList(Math.min(above + i, notes.size()), notes.size())));
        return pages;
    }

    private Page page(List<Copies> above, List<Copies> below) {
        List<Mark> body = new ArrayList<>();
        List<Page.Bookmark> bookmarks = new ArrayList<>();
        put(above.get(0), 0, body, bookmarks);
        across(body);
        down(body, below.isEmpty() ? paper.heightMm() / 2 : paper.heightMm() - EDGE_MM);
        if (!below.isEmpty()) put(below.get(0), paper.heightMm() / 2, body, bookmarks);
        return new Page(List.of(), body, bookmarks);
    }

    private void put(Copies copies, double top, List<Mark> body, List<Page.Bookmark> bookmarks) {
        at(copies.customers(), 0, top).forEach(body::add);
        at(copies.shops(), paper.widthMm() / 2, top).forEach(body::add);
        for (Page.Bookmark one : copies.customers().bookmarks())
            bookmarks.add(new Page.Bookmark(one.title(), one.y() + top - CUT_MM));
    }

    private static Stream<Mark> at(Page copy, double left, double top) {
        return copy.marks().stream().map(mark -> mark.moved(left - CUT_MM, top - CUT_MM));
    }

    private void across(List<Mark> body) {
        double y = paper.heightMm() / 2;
        for (double x = EDGE_MM; x + DASH_MM <= paper.widthMm() - EDGE_MM; x += 2 * DASH_MM)
            body.add(new Mark.Rule(x, y, x + DASH_MM, y, 0.15));
    }

    private void down(List<Mark> body, double until) {
        double x = paper.widthMm() / 2;
        for (double y = EDGE_MM; y + DASH_MM <= until; y += 2 * DASH_MM)
            body.add(new Mark.Rule(x, y, x, y + DASH_MM, 0.15));
    }
}
