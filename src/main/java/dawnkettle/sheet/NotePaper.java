package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.List;

/** Two copies of the same on one sheet of paper, one above the other, to be cut apart in the middle. */
final class NotePaper {
    private static final double DASH_MM = 3;

    private final PaperSize paper;

    NotePaper(PaperSize paper) {
        this.paper = paper;
    }

    /** What one copy has room for. */
    PaperSize half() {
        return new PaperSize(paper.widthMm(), paper.heightMm() / 2);
    }

    /** Page by page, the first copy above the second. */
    List<Page> together(List<Page> above, List<Page> below) {
        List<Page> pages = new ArrayList<>();
        for (int i = 0; i < above.size(); i++) pages.add(together(above.get(i), below.get(i)));
        return pages;
    }

    private Page together(Page above, Page below) {
        double half = half().heightMm();
        List<Mark> body = new ArrayList<>(above.body());
        for (double x = Flow.MARGIN_MM; x + DASH_MM <= paper.widthMm() - Flow.MARGIN_MM; x += 2 * DASH_MM)
            body.add(new Mark.Rule(x, half, x + DASH_MM, half, 0.15));
        below.marks().stream().map(mark -> mark.lowered(half)).forEach(body::add);
        return new Page(above.head(), body, above.bookmarks());
    }
}
