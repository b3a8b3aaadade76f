package dawnkettle.conf;

import dawnkettle.book.Nearest;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Table;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The rows of a CSV file below its header.
 *
 * @param whole whether every row could be split into cells, so that what is missing really is missing
 */
record Rows(List<Cells> cells, boolean whole) {
    private static final Rows UNREAD = new Rows(List.of(), false);

    Rows {
        cells = List.copyOf(cells);
    }

    static Rows unread() {
        return UNREAD;
    }

    /** Reads {@code text}, whose header must name exactly the {@code columns}, in any order. */
    static Rows read(String file, String text, List<String> columns, Problems problems) {
        Table table = Table.read(file, text);
        problems.addAll(table.problems());
        if (!table.problems().isEmpty()) return UNREAD;
        if (!text.endsWith("\n")) {
            problems.add(
                    Place.of(file),
                    "the last line has no end: the file may be half written",
                    "end it with a line break");
            return UNREAD;
        }
        if (!hasHeader(table, columns)) {
            problems.add(Place.of(file), "there is no header row", "write one: " + String.join(",", columns));
            return UNREAD;
        }
        return headerIsRight(table.rows().get(0), columns, problems) ? below(table, problems) : UNREAD;
    }

    /** A first row that names none of the columns is no header, and what follows is not looked at. */
    private static boolean hasHeader(Table table, List<String> columns) {
        return !table.rows().isEmpty()
                && table.rows().get(0).cells().stream().map(Table.Cell::text).anyMatch(columns::contains);
    }

    private static Rows below(Table table, Problems problems) {
        List<Table.Cell> header = table.rows().get(0).cells();
        List<Cells> rows = new ArrayList<>();
        int before = problems.count();
        for (Table.Row row : table.rows().subList(1, table.rows().size())) {
            if (row.cells().size() == header.size()) rows.add(cells(header, row, problems));
            else
                problems.add(
                        row.place(),
                        "the row has \"" + row.cells().size() + "\" cells where the header has " + header.size(),
                        "write one cell for each column and quote a cell that holds a comma");
        }
        return new Rows(rows, problems.count() == before);
    }

    private static Cells cells(List<Table.Cell> header, Table.Row row, Problems problems) {
        Map<String, Written> cells = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
            Table.Cell cell = row.cells().get(i);
            String column = header.get(i).text();
            cells.put(column, new Written(column, cell.text(), Written.Kind.CELL, cell.place(), problems));
        }
        return new Cells(cells, row.place(), problems);
    }

    private static boolean headerIsRight(Table.Row header, List<String> columns, Problems problems) {
        int before = problems.count();
        List<String> seen = new ArrayList<>();
        for (Table.Cell cell : header.cells()) {
            String name = Written.shown(cell.text());
            if (seen.contains(name)) problems.add(cell.place(), "column \"" + name + "\" is there twice", "keep one");
            else if (!columns.contains(name))
                problems.add(cell.place(), "column \"" + name + "\" is not known here", remedyFor(name, columns));
            seen.add(name);
        }
        for (String column : columns)
            if (!seen.contains(column))
                problems.add(
                        header.place(),
                        "column \"" + column + "\" is missing",
                        "add it to the header and to every row");
        return problems.count() == before;
    }

    private static String remedyFor(String name, List<String> columns) {
        return Nearest.to(name, columns)
                .map(near -> "write \"" + near + "\" or take the column out")
                .orElse("take the column out");
    }
}
