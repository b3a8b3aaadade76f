package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.List;

/** A page while it is being filled. */
final class Canvas {
    private final List<Mark> marks = new ArrayList<>();
    private final List<Page.Bookmark> bookmarks = new ArrayList<>();
    private final Typeface typeface;

    Canvas(Typeface typeface) {
        this.typeface = typeface;
    }

    Typeface typeface() {
        return typeface;
    }

    void text(double x, double baseline, Lettering lettering, String string) {
        if (!string.isBlank()) marks.add(new Mark.Text(x, baseline, lettering, string));
    }

    /** Text that is broken into lines within the frame's width, from the frame's top; returns the y below it. */
    double lines(Frame frame, Lettering lettering, String string) {
        double y = frame.y();
        for (String line : new Wrapping(typeface).lines(string, lettering, frame.width())) {
            text(anchor(frame, lettering.align()), y + lettering.riseMm(), lettering, line);
            y += lettering.lineMm();
        }
        return y;
    }

    private static double anchor(Frame frame, Lettering.Align align) {
        return switch (align) {
            case LEFT -> frame.x();
            case CENTRE -> frame.x() + frame.width() / 2;
            case RIGHT -> frame.right();
        };
    }

    void line(Mark.Rule rule) {
        marks.add(rule);
    }

    void across(double x1, double x2, double y, double widthMm) {
        marks.add(new Mark.Rule(x1, y, x2, y, widthMm));
    }

    void down(double x, double y1, double y2, double widthMm) {
        marks.add(new Mark.Rule(x, y1, x, y2, widthMm));
    }

    void box(Frame frame, Mark.Look look) {
        marks.add(new Mark.Box(frame.x(), frame.y(), frame.width(), frame.height(), look));
    }

    void bookmark(String title, double y) {
        bookmarks.add(new Page.Bookmark(title, y));
    }

    /** This page with what stands at its head. */
    Page under(Canvas head) {
        return new Page(head.marks, marks, bookmarks);
    }
}
