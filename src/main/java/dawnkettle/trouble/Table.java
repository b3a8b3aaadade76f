package dawnkettle.trouble;

import java.util.ArrayList;
import java.util.List;

/**
 * Comma-separated text (RFC 4180) as rows of cells, each with its place. Our own reader because an operator is told the
 * column of a bad cell, which a record-wise library does not know.
 *
 * @param rows the rows, the header first; empty where the text is empty
 * @param problems what is wrong with the text as such: a quote never closed, text after a closing quote
 */
public record Table(List<Row> rows, List<Problem> problems) {
    public Table {
        rows = List.copyOf(rows);
        problems = List.copyOf(problems);
    }

    /** One cell's text, unquoted, and where it begins. */
    public record Cell(String text, Place place) {}

    /** One row's cells, and where it begins. */
    public record Row(List<Cell> cells, Place place) {
        public Row {
            cells = List.copyOf(cells);
        }

        boolean isBlank() {
            return cells.size() == 1 && cells.get(0).text().isBlank();
        }
    }

    /** Reads {@code text}; lines may end in CR LF or LF; blank lines and lines that begin with # are left out. */
    public static Table read(String file, String text) {
        return new Reader(file, text.startsWith("\uFEFF") ? text.substring(1) : text).read();
    }

    private static final class Reader {
        private final String file;
        private final String text;
        private final List<Row> rows = new ArrayList<>();
        private final List<Problem> problems = new ArrayList<>();
        private int at;
        private int line = 1;
        private int lineStart;

        Reader(String file, String text) {
            this.file = file;
            this.text = text;
        }

        Table read() {
            while (at < text.length()) {
                if (text.charAt(at) == '#') skipLine();
                else {
                    Row row = row();
                    if (!row.isBlank()) rows.add(row);
                }
            }
            return new Table(rows, problems);
        }

        private Row row() {
            Place start = here();
            List<Cell> cells = new ArrayList<>();
            while (true) {
                cells.add(cell());
                if (at < text.length() && text.charAt(at) == ',') {
                    at++;
                    continue;
                }
                endLine();
                return new Row(cells, start);
            }
        }

        private Cell cell() {
            Place place = here();
            if (at < text.length() && text.charAt(at) == '"') return quoted(place);
            int from = at;
            while (at < text.length() && ",\r\n".indexOf(text.charAt(at)) < 0) at++;
            return new Cell(text.substring(from, at).strip(), place);
        }

        private Cell quoted(Place place) {
            StringBuilder cell = new StringBuilder();
            at++;
            while (at < text.length()) {
                char c = text.charAt(at);
                if (c == '"') {
                    at++;
                    if (at < text.length() && text.charAt(at) == '"') cell.append('"');
                    else return afterQuote(cell.toString(), place);
                } else {
                    cell.append(c);
                    if (c == '\n') newLine(at + 1);
                }
                at++;
            }
            problems.add(new Problem(place, "a quoted cell is never closed", "end it with a \""));
            return new Cell(cell.toString(), place);
        }

        private Cell afterQuote(String cell, Place place) {
            int from = at;
            while (at < text.length() && ",\r\n".indexOf(text.charAt(at)) < 0) at++;
            String rest = text.substring(from, at);
            if (!rest.isBlank())
                problems.add(new Problem(
                        place, "\"" + rest + "\" stands after a closing quote", "double the quotes inside a cell"));
            return new Cell(cell, place);
        }

        private void endLine() {
            if (at < text.length() && text.charAt(at) == '\r') at++;
            if (at < text.length() && text.charAt(at) == '\n') at++;
            newLine(at);
        }

        private void skipLine() {
            while (at < text.length() && text.charAt(at) != '\n') at++;
            endLine();
        }

        private void newLine(int start) {
            line++;
            lineStart = start;
        }

        private Place here() {
            return new Place(file, line, at - lineStart + 1);
        }
    }
}
