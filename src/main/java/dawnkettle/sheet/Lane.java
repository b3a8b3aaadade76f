package dawnkettle.sheet;

/** One row of the strip. */
interface Lane {
    double heightMm(Strip strip);

    void draw(Strip strip, Canvas canvas, Frame frame);

    /** The name at the left of the lane, standing in the middle of its height. */
    static void name(String name, double namesMm, Canvas canvas, Frame frame) {
        Lettering lettering = Lettering.plain(8.5);
        double lines = Wrapping.of(canvas.typeface())
                .lines(name, lettering, namesMm - 2)
                .size();
        double top = frame.y() + (frame.height() - lines * lettering.lineMm()) / 2;
        canvas.lines(new Frame(frame.x(), top, namesMm - 2, 0), lettering, name);
    }

    static double nameMm(String name, double namesMm, Typeface typeface) {
        Lettering lettering = Lettering.plain(8.5);
        return 0.4
                + lettering.lineMm()
                        * Wrapping.of(typeface)
                                .lines(name, lettering, namesMm - 2)
                                .size();
    }
}
