package dawnkettle.draw;

import dawnkettle.label.Pitch;

/**
 * What lengths and letters come to in dots.
 *
 * @param leastXHeight height of a small x in micrometres that no required text may go below
 */
record LabelGauge(LabelTypefaces typefaces, Pitch pitch, int leastXHeight) {
    /** Ems from one line of text to the next. */
    static final double LEADING = 1.18;

    /** Ems that capitals with an accent reach above the line. */
    static final double ABOVE = 0.78;

    /** Ems that letters hang below the line. */
    static final double BELOW = 0.24;

    int dots(long micrometres) {
        return pitch.dots(micrometres);
    }

    /** The least em in dots whose small x is as high as the rule wants, rounded up. */
    int leastEm() {
        return (int) Math.ceil(pitch.dotsReaching(leastXHeight) / typefaces.xHeight());
    }

    /** Millimetres, rounded up to a tenth, that so many dots take. */
    String millimetres(int dots) {
        int tenths = -Math.floorDiv(-pitch.micrometres(dots), 100);
        return tenths / 10 + "." + tenths % 10;
    }
}
