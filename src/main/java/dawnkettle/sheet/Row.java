package dawnkettle.sheet;

import java.util.List;

/** One row of a table: a cell a column, or one cell across all of them. */
record Row(List<Cell> cells, Look look) {
    /** How a row stands out. */
    enum Look {
        PLAIN,
        SHADED,
        INVERSE,
        NEW_HOUR
    }

    Row {
        cells = List.copyOf(cells);
    }

    static Row of(Cell... cells) {
        return new Row(List.of(cells), Look.PLAIN);
    }

    static Row across(Look look, Cell cell) {
        return new Row(List.of(cell), look);
    }

    /** White letters on a black bar. */
    static Row bar(double points, String text) {
        return across(Look.INVERSE, Cell.text(text, Lettering.bold(points).white()));
    }

    static Row shaded(double points, String text) {
        return across(Look.SHADED, Cell.text(text, Lettering.bold(points)));
    }

    /** Whether it announces the row after it, as a bar or a wash does, and so must not stand last on a page. */
    boolean announces() {
        return cells.size() == 1 && (look == Look.SHADED || look == Look.INVERSE);
    }

    Row looking(Look other) {
        return new Row(cells, other);
    }
}
