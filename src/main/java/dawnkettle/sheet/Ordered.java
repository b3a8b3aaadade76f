package dawnkettle.sheet;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is ordered for a production day, where no plan of it came out.
 *
 * @param isClosed whether the book is closed, so that nothing more comes
 * @param reason why there is no plan
 * @param madeAt the planning clock
 */
public record Ordered(ClosedBook book, boolean isClosed, Reason reason, Instant madeAt) {
    /** Why no plan came out, as far as whoever reads the sheet cares. */
    public enum Reason {
        MISTAKE,
        TOO_LONG
    }

    LocalDate forDay() {
        return book.productionDate();
    }

    /** A customer's lines of one product and day are one. */
    List<Given> given() {
        Map<Given, Integer> packs = new LinkedHashMap<>();
        for (BookLine line : book.lines()) packs.merge(keyOf(line), line.packs(), Integer::sum);
        return packs.entrySet().stream()
                .map(one -> new Given(
                        one.getKey().route(),
                        one.getKey().customer(),
                        one.getKey().product(),
                        one.getValue(),
                        one.getKey().on()))
                .toList();
    }

    private Given keyOf(BookLine line) {
        Optional<LocalDate> on = Optional.of(line.deliveryDate()).filter(day -> !day.equals(forDay()));
        return new Given(line.route(), line.customer(), line.product(), 0, on);
    }
}
