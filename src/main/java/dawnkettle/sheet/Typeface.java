package dawnkettle.sheet;

/** How wide letters are: the one thing that laying out needs to know of a typeface. */
public interface Typeface {
    double widthMm(String text, Lettering lettering);
}
