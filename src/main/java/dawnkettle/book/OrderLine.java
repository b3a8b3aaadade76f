package dawnkettle.book;

import java.time.Instant;
import java.time.LocalDate;

/**
 * One line of an order, as it was taken.
 *
 * @param line counted from 1 within the order
 * @param packs packs ordered, at least 1
 * @param source where it came from
 * @param origin the file, mail or word of the command line, for whoever asks
 * @param takenAt when
 */
public record OrderLine(
        OrderNumber order,
        int line,
        String customer,
        String product,
        int packs,
        LocalDate deliveryDate,
        Source source,
        String origin,
        Instant takenAt) {
    public OrderLine {
        if (line < 1) throw new IllegalArgumentException("lines count from 1, not " + line);
        if (packs < 1) throw new IllegalArgumentException("packs must be at least 1, not " + packs);
    }

    /** The same order of the customer, taken in another way. */
    public OrderLine takenAs(Source other, String from, Instant at) {
        return new OrderLine(order, line, customer, product, packs, deliveryDate, other, from, at);
    }

    /** Where a line came from. */
    public enum Source {
        FILE,
        COMMAND,
        MAIL,
        STANDING
    }
}
