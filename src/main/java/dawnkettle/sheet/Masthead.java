package dawnkettle.sheet;

import java.util.List;

/**
 * What stands at the head and foot of every page of a sheet.
 *
 * @param first the very first line, as which fallback sheet to destroy; may be empty
 * @param banner how much of the plan could be had, white on black; empty for a full plan
 * @param foot cautions that belong to every page
 */
record Masthead(String first, Name name, String banner, List<String> foot) {
    /**
     * Which sheet this is.
     *
     * @param date for which day, in letters
     * @param revision which revision and what it replaces; may be empty
     * @param facts shop, when it was planned
     * @param mode white on black where no banner says how much of the plan could be had; may be empty
     */
    record Name(String title, String date, String revision, String facts, String mode) {}

    private static final Lettering FIRST = Lettering.plain(10);
    private static final Lettering TITLE = Lettering.bold(21);
    private static final Lettering DATE = Lettering.bold(15).aligned(Lettering.Align.RIGHT);
    private static final Lettering REVISION = Lettering.bold(12);
    private static final Lettering FACTS = Lettering.plain(10);
    private static final Lettering BANNER = Lettering.bold(12.5).white();
    private static final Lettering MODE = Lettering.bold(9.5).white();
    private static final Lettering FOOT = Lettering.plain(9);
    private static final double PAGE_MM = 32;
    private static final double BAR_PAD_MM = 0.8;
    private static final double GAP_MM = 2;

    Masthead {
        foot = List.copyOf(foot);
    }

    String title() {
        return name.title();
    }

    String date() {
        return name.date();
    }

    Masthead withBanner(String other) {
        return new Masthead(first, name, other, foot);
    }

    Masthead withFirst(String other) {
        return new Masthead(other, name, banner, foot);
    }

    Masthead withFoot(List<String> other) {
        return new Masthead(first, name, banner, other);
    }

    /** From the top margin to where the page's own content begins. */
    double headMm(double width, Typeface typeface) {
        return draw(new Canvas(typeface), new Frame(0, 0, width, 0), "");
    }

    double footMm(double width, Typeface typeface) {
        Wrapping wrapping = new Wrapping(typeface);
        return GAP_MM
                + foot.stream()
                        .mapToDouble(line -> wrapping.heightMm(line, FOOT, width))
                        .sum();
    }

    /** Draws the head and returns the y below it. */
    double draw(Canvas canvas, Frame frame, String pageOf) {
        double y = frame.y();
        if (!first.isBlank()) y = canvas.lines(at(frame, y), FIRST, first);
        double dateWidth = new Wrapping(canvas.typeface()).widthMm(name.date(), DATE);
        double below = canvas.lines(new Frame(frame.x(), y, frame.width() - dateWidth - 3, 0), TITLE, name.title());
        double drop = TITLE.riseMm() - DATE.riseMm();
        Frame date = new Frame(frame.right() - dateWidth - 1, y + drop, dateWidth + 1, 0);
        y = Math.max(below, canvas.lines(date, DATE, name.date()));
        if (!name.mode().isBlank()) mode(canvas, at(frame, y));
        if (!name.revision().isBlank())
            y = canvas.lines(new Frame(frame.x(), y, frame.width() - PAGE_MM, 0), REVISION, name.revision());
        canvas.text(frame.right(), y + FACTS.riseMm(), FACTS.aligned(Lettering.Align.RIGHT), pageOf);
        y = canvas.lines(new Frame(frame.x(), y, frame.width() - PAGE_MM, 0), FACTS, name.facts()) + 0.8;
        if (!banner.isBlank()) y = bar(canvas, at(frame, y));
        canvas.across(frame.x(), frame.right(), y, 0.7);
        return y + GAP_MM;
    }

    private void mode(Canvas canvas, Frame at) {
        String mode = Words.first(name.mode());
        double width = canvas.typeface().widthMm(mode, MODE) + 3;
        canvas.box(new Frame(at.right() - width, at.y() + 0.3, width, REVISION.lineMm() - 0.4), Mark.Look.BLACK);
        canvas.text(at.right() - 1.5, at.y() + MODE.riseMm() + 0.5, MODE.aligned(Lettering.Align.RIGHT), mode);
    }

    private double bar(Canvas canvas, Frame at) {
        Wrapping wrapping = new Wrapping(canvas.typeface());
        double height = wrapping.heightMm(banner, BANNER, at.width() - 4) + 2 * BAR_PAD_MM;
        canvas.box(new Frame(at.x(), at.y(), at.width(), height), Mark.Look.BLACK);
        canvas.lines(new Frame(at.x() + 2, at.y() + BAR_PAD_MM, at.width() - 4, 0), BANNER, banner);
        return at.y() + height;
    }

    void drawFoot(Canvas canvas, Frame frame) {
        if (foot.isEmpty()) return;
        canvas.across(frame.x(), frame.right(), frame.y() + GAP_MM / 2, 0.2);
        double y = frame.y() + GAP_MM;
        for (String line : foot) y = canvas.lines(at(frame, y), FOOT, line);
    }

    private static Frame at(Frame frame, double y) {
        return new Frame(frame.x(), y, frame.width(), 0);
    }
}
