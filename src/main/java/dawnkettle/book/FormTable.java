package dawnkettle.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;

/** A table of a purchase order, whose head names a column of quantities and one of descriptions. */
record FormTable(List<Integer> starts, int description, int quantity, int unit) {
    private static final FormTable NONE = new FormTable(List.of(), -1, -1, -1);
    private static final Set<String> QUANTITIES = Set.of("qty", "quantity");
    private static final Set<String> DESCRIPTIONS = Set.of("description", "product", "article");
    private static final Set<String> UNITS = Set.of("uom", "unit");
    /** Columns that say nothing of what is wanted; under any other head nothing is read as a table. */
    private static final Set<String> NUMBERS = Set.of(
            "line", "no", "no.", "#", "pos", "item", "our item", "your item", "code", "sku", "item no", "item no.");

    private static final Set<String> EACH = Set.of("ea", "each", "pc", "pcs");
    private static final Set<String> CASES = Set.of("cs", "case", "cases");

    /** @param names whether words name a product */
    static List<String> read(List<String> lines, Predicate<String> names) {
        List<String> written = new ArrayList<>();
        FormTable table = NONE;
        for (String line : lines) {
            List<String> cells = List.of(line.split("\\s{2,}|\\t"));
            FormTable head = headedBy(cells, line);
            if (head.quantity >= 0) table = head;
            if (cells.size() != table.columns()) cells = table.cells(line);
            if (cells.size() != table.columns() && head.quantity < 0) table = NONE;
            if (head.quantity < 0) written.add(table.quantity >= 0 ? table.row(line, cells, names) : line);
        }
        return written;
    }

    private static FormTable headedBy(List<String> cells, String line) {
        int description = -1;
        int quantity = -1;
        int unit = -1;
        for (int i = 0; i < cells.size(); i++) {
            String name = cells.get(i).strip().toLowerCase(Locale.ROOT);
            if (QUANTITIES.contains(name) && quantity < 0) quantity = i;
            else if (DESCRIPTIONS.contains(name) && description < 0) description = i;
            else if (UNITS.contains(name) && unit < 0) unit = i;
            else if (!NUMBERS.contains(name)) return NONE;
        }
        boolean whole = cells.size() > 2 && quantity >= 0 && description >= 0;
        return whole ? new FormTable(starts(cells, line), description, quantity, unit) : NONE;
    }

    private static List<Integer> starts(List<String> cells, String line) {
        List<Integer> starts = new ArrayList<>();
        int from = 0;
        for (String cell : cells) {
            starts.add(line.indexOf(cell, from));
            from = line.indexOf(cell, from) + cell.length();
        }
        return starts;
    }

    private int columns() {
        return starts.size();
    }

    /** By where the columns begin, each behind a blank; none where the line does not keep to them. */
    private List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < columns(); i++) {
            int from = starts.get(i);
            int until = i + 1 < columns() ? starts.get(i + 1) : line.length();
            boolean kept = from < until && until <= line.length() && (from == 0 || line.charAt(from - 1) == ' ');
            if (!kept) return List.of();
            cells.add(line.substring(from, until).strip());
        }
        return cells;
    }

    /** As a person would write it, or as it is where a cell says anything else. */
    private String row(String line, List<String> cells, Predicate<String> names) {
        String many = cells.get(quantity).strip();
        String packed = unit < 0 ? "ea" : cells.get(unit).strip().toLowerCase(Locale.ROOT);
        if (!many.matches("\\d{1,4}") || !EACH.contains(packed) && !CASES.contains(packed)) return line;
        if (!names.test(cells.get(description))) return line;
        return many
                + (CASES.contains(packed) ? " cases " : " ")
                + cells.get(description).strip();
    }
}
