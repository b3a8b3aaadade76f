package dawnkettle.intake;

import dawnkettle.book.Admission;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import dawnkettle.trouble.Table;
import dawnkettle.trouble.Table.Cell;
import dawnkettle.trouble.Table.Row;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A dropped file as a table of orders, or why it cannot be read as a whole.
 *
 * @param rows the rows below the header; empty where there are problems
 * @param problems why the whole file is refused
 */
record OrderTable(List<Line> rows, List<Problem> problems) {
    /** A file above this holds no day's orders (common practice, no source). */
    static final int MOST_BYTES = 1_000_000;

    private static final int MOST_ROWS = 5_000;
    private static final int MOST_LETTERS_IN_A_CELL = 200;

    OrderTable {
        rows = List.copyOf(rows);
        problems = List.copyOf(problems);
    }

    /** The columns; the last may be left out. */
    enum Column {
        ORDER,
        LINE,
        CUSTOMER,
        PRODUCT,
        PACKS,
        DELIVERY_DATE,
        ACTION;

        String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** One row with the cells by their columns; a cell that is not there is missing from the map. */
    record Line(Map<Column, Cell> cells, Place place, boolean whole) {
        String text(Column column) {
            return cells.containsKey(column) ? cells.get(column).text() : "";
        }

        Place place(Column column) {
            return cells.containsKey(column) ? cells.get(column).place() : place;
        }
    }

    /** @param bytes all of the file, or more than {@link #MOST_BYTES} of it */
    static OrderTable read(String file, byte[] bytes) {
        if (bytes.length > MOST_BYTES)
            return refused(file, "the file is larger than 1 MB", "drop a file of at most 1 MB with orders alone");
        Optional<String> text = decode(bytes);
        if (text.isEmpty() || text.get().chars().anyMatch(OrderTable::isNotText))
            return refused(file, "the file is not UTF-8 text", "save it as CSV with UTF-8 encoding");
        if (text.get().isBlank()) return refused(file, "the file is empty", "begin it with " + header());
        Table table = Table.read(file, text.get());
        if (!table.problems().isEmpty()) return new OrderTable(List.of(), table.problems());
        if (!text.get().endsWith("\n"))
            return refused(
                    file, "the last line has no end, so the file may be half written", "end it with a line break");
        if (table.rows().isEmpty()) return refused(file, "the file has no header row", "begin it with " + header());
        return rows(file, table.rows());
    }

    private static OrderTable rows(String file, List<Row> rows) {
        List<Problem> problems = new ArrayList<>();
        List<Column> columns = columns(rows.get(0), problems);
        List<Line> lines = new ArrayList<>();
        for (Row row : rows.subList(1, rows.size()))
            if (row.cells().stream().anyMatch(cell -> !cell.text().isEmpty())) lines.add(line(row, columns));
        if (problems.isEmpty()) wholeFile(file, lines, problems);
        return new OrderTable(problems.isEmpty() ? lines : List.of(), problems);
    }

    private static void wholeFile(String file, List<Line> lines, List<Problem> problems) {
        if (lines.size() > MOST_ROWS)
            problems.add(new Problem(
                    Place.of(file), "the file has more than " + MOST_ROWS + " lines", "split it into smaller files"));
        for (Line line : lines) {
            if (line.text(Column.ORDER).isEmpty())
                problems.add(new Problem(
                        line.place(Column.ORDER),
                        "the order number is missing, and the line may belong to any order",
                        "write the order's number in each of its lines"));
            line.cells().values().stream()
                    .filter(cell -> cell.text().length() > MOST_LETTERS_IN_A_CELL)
                    .forEach(cell -> problems.add(new Problem(
                            cell.place(),
                            "the cell has more than " + MOST_LETTERS_IN_A_CELL + " letters",
                            "look for a missing line break or quote")));
        }
        if (!lines.isEmpty() && !lines.get(lines.size() - 1).whole())
            problems.add(new Problem(
                    lines.get(lines.size() - 1).place(),
                    "the last line does not have all its cells, so the file may be half written",
                    "drop the whole file again"));
    }

    private static List<Column> columns(Row header, List<Problem> problems) {
        List<Column> columns = new ArrayList<>();
        for (Cell cell : header.cells()) {
            Optional<Column> column = column(cell.text());
            if (column.isEmpty())
                problems.add(new Problem(
                        cell.place(),
                        "unknown column \"" + Admission.quotable(cell.text()) + "\"",
                        "the columns are " + header() + ", with commas between"));
            else if (columns.contains(column.get()))
                problems.add(new Problem(
                        cell.place(), "column \"" + cell.text() + "\" stands twice", "leave one of them out"));
            column.ifPresent(columns::add);
        }
        for (Column column : Column.values())
            if (column != Column.ACTION && !columns.contains(column))
                problems.add(new Problem(
                        header.place(),
                        "column \"" + column.word() + "\" is missing",
                        "begin the file with " + header()));
        return columns;
    }

    private static Line line(Row row, List<Column> columns) {
        Map<Column, Cell> cells = new EnumMap<>(Column.class);
        for (int i = 0; i < Math.min(columns.size(), row.cells().size()); i++)
            cells.put(columns.get(i), row.cells().get(i));
        return new Line(cells, row.place(), row.cells().size() == columns.size());
    }

    private static Optional<Column> column(String word) {
        for (Column column : Column.values()) if (column.word().equalsIgnoreCase(word)) return Optional.of(column);
        return Optional.empty();
    }

    private static String header() {
        return "order,line,customer,product,packs,delivery_date,action";
    }

    private static boolean isNotText(int c) {
        return Character.isISOControl(c) && c != '\n' && c != '\r' && c != '\t';
    }

    private static Optional<String> decode(byte[] bytes) {
        try {
            return Optional.of(StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString());
        } catch (CharacterCodingException notUtf8) {
            return Optional.empty();
        }
    }

    private static OrderTable refused(String file, String what, String remedy) {
        return new OrderTable(List.of(), List.of(new Problem(Place.of(file), what, remedy)));
    }
}
