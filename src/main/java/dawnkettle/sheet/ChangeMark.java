package dawnkettle.sheet;

/** What stands left of a row that is changed: a bar as high as the row, and a triangle before it. */
final class ChangeMark {
    private static final double BAR_MM = 1;
    private static final double GAP_MM = 0.8;
    private static final double SIDE_MM = 3.2;

    private ChangeMark() {}

    static void draw(Canvas canvas, Frame row) {
        double right = row.x() - GAP_MM - BAR_MM;
        canvas.box(new Frame(right, row.y() + 0.3, BAR_MM, row.height() - 0.6), Mark.Look.BLACK);
        double middle = row.y() + row.height() / 2;
        double left = right - GAP_MM - SIDE_MM;
        canvas.slope(left, middle - SIDE_MM / 2, left, middle + SIDE_MM / 2);
        canvas.slope(left, middle - SIDE_MM / 2, left + SIDE_MM, middle);
        canvas.slope(left, middle + SIDE_MM / 2, left + SIDE_MM, middle);
    }
}
