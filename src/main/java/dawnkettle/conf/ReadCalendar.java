package dawnkettle.conf;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Reads {@code calendar.csv}: the single days on which nothing is made. */
final class ReadCalendar {
    static final String FILE = "calendar.csv";
    static final List<String> COLUMNS = List.of("date", "why");

    private ReadCalendar() {}

    static Map<LocalDate, String> read(Rows rows) {
        Map<LocalDate, String> closed = new TreeMap<>();
        for (Cells row : rows.cells()) {
            Written date = row.in("date");
            if (closed.putIfAbsent(date.date(), row.in("why").words()) != null
                    && date.text().matches("[0-9-]{10}")) date.bad(0, "is there twice", "keep one");
        }
        return closed;
    }
}
