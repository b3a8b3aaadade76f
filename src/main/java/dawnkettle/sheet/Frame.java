package dawnkettle.sheet;

/** A rectangle of paper to fill, in millimetres. */
record Frame(double x, double y, double width, double height) {
    double right() {
        return x + width;
    }

    double bottom() {
        return y + height;
    }

    Frame inset(double mm) {
        return new Frame(x + mm, y + mm, width - 2 * mm, height - 2 * mm);
    }
}
