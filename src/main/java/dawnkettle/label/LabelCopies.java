package dawnkettle.label;

/**
 * One picture, so many times.
 *
 * @param picture as it is read
 * @param turned whether it comes out lying
 * @param copies at least 1
 */
public record LabelCopies(Kind kind, Dots picture, boolean turned, int copies) {
    public LabelCopies {
        if (copies < 1) throw new IllegalArgumentException("\"" + copies + "\" copies; print at least 1");
    }

    /** What a picture is; slips are not counted as labels. */
    public enum Kind {
        SLIP,
        CASE,
        PART_CASE
    }

    public boolean isCounted() {
        return kind != Kind.SLIP;
    }

    /** As it leaves the head. */
    public Dots fed() {
        return turned ? picture.turned() : picture;
    }

    LabelCopies times(int other) {
        return new LabelCopies(kind, picture, turned, other);
    }
}
