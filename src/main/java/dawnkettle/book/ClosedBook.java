package dawnkettle.book;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/**
 * The book of one making day, frozen.
 *
 * @param productionDate the day on which its lines are made
 * @param lines by delivery date, route, customer, order and line; none with 0 packs
 */
public record ClosedBook(LocalDate productionDate, Instant closedAt, List<BookLine> lines) {
    public ClosedBook {
        lines = List.copyOf(lines);
    }

    public long packs() {
        return lines.stream().mapToLong(BookLine::packs).sum();
    }
}
