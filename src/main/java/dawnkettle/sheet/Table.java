package dawnkettle.sheet;

import java.util.List;

/**
 * Rows under headings, in sections that may each have a head of their own.
 *
 * @param rowMm least height of a row
 * @param stand how cells stand in their rows
 */
record Table(List<Column> columns, double rowMm, List<Section> sections, Stand stand) {
    /** First lines on one baseline; the same with rows close together; or every cell in the middle of its row. */
    enum Stand {
        BASELINE,
        DENSE,
        MIDDLE
    }

    private static final double PAD_MM = 1.3;
    private static final double DENSE_PAD_MM = 0.45;
    private static final double DENSE_SIDE_MM = 0.9;
    private static final Lettering HEADING = Lettering.bold(9.5);
    private static final Lettering DENSE_HEADING = Lettering.bold(8.5);

    Table(List<Column> columns, double rowMm, List<Section> sections) {
        this(columns, rowMm, sections, Stand.BASELINE);
    }

    /** The same with rows close together, for lists that are long and read at the bench. */
    Table dense() {
        return new Table(columns, rowMm, sections, Stand.DENSE);
    }

    private double sideMm() {
        return stand == Stand.DENSE ? DENSE_SIDE_MM : PAD_MM;
    }

    private boolean middled() {
        return stand == Stand.MIDDLE;
    }

    private Lettering headingLetters() {
        return stand == Stand.DENSE ? DENSE_HEADING : HEADING;
    }

    Table {
        columns = List.copyOf(columns);
        sections = List.copyOf(sections);
    }

    /** @param share of the width, counted against the other columns' */
    record Column(String heading, double share) {}

    /**
     * Rows that belong together.
     *
     * @param head rows above them; none for a table without sections
     * @param headAgain the same where the section goes on overleaf
     * @param whole whether it is kept on one page where one page holds it
     */
    record Section(List<Row> head, List<Row> headAgain, List<Row> rows, boolean whole) {
        Section {
            head = List.copyOf(head);
            headAgain = List.copyOf(headAgain);
            rows = List.copyOf(rows);
        }

        static Section plain(List<Row> rows) {
            return new Section(List.of(), List.of(), rows, false);
        }
    }

    double headingMm(double width, Typeface typeface) {
        if (columns.stream().allMatch(column -> column.heading().isBlank())) return 0;
        double highest = 0;
        for (int i = 0; i < columns.size(); i++) {
            Cell cell = Cell.text(columns.get(i).heading(), headingLetters());
            highest = Math.max(
                    highest,
                    cell.heightMm(span(i, i + 1, new Frame(0, 0, width, 0)).width(), typeface));
        }
        return highest + 2 * PAD_MM;
    }

    void drawHeading(Canvas canvas, Frame frame) {
        for (int i = 0; i < columns.size(); i++)
            canvas.lines(span(i, i + 1, frame), headingLetters(), columns.get(i).heading());
        canvas.across(frame.x(), frame.right(), frame.bottom(), 0.5);
    }

    /** Of the whole table, on a page without end. */
    double heightMm(double width, Typeface typeface) {
        return headingMm(width, typeface)
                + sections.stream()
                        .mapToDouble(section ->
                                heightMm(section.head(), width, typeface) + heightMm(section.rows(), width, typeface))
                        .sum();
    }

    double heightMm(List<Row> rows, double width, Typeface typeface) {
        return rows.stream().mapToDouble(row -> heightMm(row, width, typeface)).sum();
    }

    double heightMm(Row row, double width, Typeface typeface) {
        double least = row.cells().size() == 1 && columns.size() > 1 ? 0 : rowMm;
        return Math.max(least, contentMm(row, width, typeface) + 2 * padMm());
    }

    private double contentMm(Row row, double width, Typeface typeface) {
        double highest = 0;
        for (int i = 0; i < row.cells().size(); i++) {
            Cell cell = row.cells().get(i);
            highest = Math.max(highest, drop(cell, row) + heightMm(row, i, width, typeface));
        }
        return highest;
    }

    private double heightMm(Row row, int index, double width, Typeface typeface) {
        return row.cells()
                .get(index)
                .heightMm(field(row, index, new Frame(0, 0, width, 0)).width(), typeface);
    }

    void draw(Canvas canvas, Row row, Frame frame) {
        if (row.look() == Row.Look.INVERSE) canvas.box(frame, Mark.Look.BLACK);
        if (row.look() == Row.Look.SHADED) canvas.box(frame, Mark.Look.SHADE);
        if (row.look() == Row.Look.NEW_HOUR) canvas.across(frame.x(), frame.right(), frame.y(), 0.6);
        double room = frame.height() - 2 * padMm();
        double content = contentMm(row, frame.width(), canvas.typeface());
        for (int i = 0; i < row.cells().size(); i++) {
            Frame field = field(row, i, frame);
            Cell cell = row.cells().get(i);
            double own = heightMm(row, i, frame.width(), canvas.typeface());
            double drop = middled() ? (room - own) / 2 : (room - content) / 2 + drop(cell, row);
            cell.draw(canvas, new Frame(field.x(), frame.y() + padMm() + drop, field.width(), frame.height()));
        }
        canvas.across(frame.x(), frame.right(), frame.bottom(), 0.15);
    }

    /** By how much a cell hangs lower so that first lines stand on one baseline. */
    private double drop(Cell cell, Row row) {
        if (middled() || cell.riseMm() == 0) return 0;
        return row.cells().stream().mapToDouble(Cell::riseMm).max().orElse(0) - cell.riseMm();
    }

    /** Above and below the content of a row. */
    private double padMm() {
        return switch (stand) {
            case BASELINE -> PAD_MM;
            case DENSE -> DENSE_PAD_MM;
            case MIDDLE -> PAD_MM / 2;
        };
    }

    private Frame field(Row row, int index, Frame frame) {
        return row.cells().size() == 1 ? span(0, columns.size(), frame) : span(index, index + 1, frame);
    }

    private Frame span(int from, int until, Frame frame) {
        double all = shares(0, columns.size());
        double x = frame.x() + frame.width() * shares(0, from) / all;
        double width = frame.width() * shares(from, until) / all;
        return new Frame(x + sideMm(), frame.y() + PAD_MM, width - 2 * sideMm(), 0);
    }

    private double shares(int from, int until) {
        return columns.subList(from, until).stream().mapToDouble(Column::share).sum();
    }
}
