package dawnkettle.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A page while it is being filled. */
final class Canvas {
    static final String BETWEEN = " ";

    private final List<Mark> marks = new ArrayList<>();
    private final List<Page.Bookmark> bookmarks = new ArrayList<>();
    private final Typeface typeface;

    Canvas(Typeface typeface) {
        this.typeface = typeface;
    }

    /** How many marks there are. */
    int size() {
        return marks.size();
    }

    /** What the marks from the one of that number on say. */
    String textFrom(int from) {
        return marks.subList(from, marks.size()).stream()
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).string())
                .collect(Collectors.joining(BETWEEN));
    }

    void slope(double x1, double y1, double x2, double y2) {
        marks.add(new Mark.Rule(x1, y1, x2, y2, 0.6));
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
        for (Wrapping.Line line : new Wrapping(typeface).set(string, lettering, frame.width())) {
            text(anchor(frame, lettering.align()), y + line.lettering().riseMm(), line.lettering(), line.text());
            y += line.lettering().lineMm();
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
        bookmarks.add(new Page.Bookmark(Words.first(title), y));
    }

    /** This page with what stands at its head. */
    Page under(Canvas head) {
        return new Page(head.marks, marks, bookmarks);
    }
}
