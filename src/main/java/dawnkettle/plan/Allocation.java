package dawnkettle.plan;

import dawnkettle.book.OrderNumber;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;

/**
 * Packs of one lot for one line of the book.
 *
 * @param fromStock whether the lot lies in the cold room already
 * @param daysLeft days left on the day of delivery
 */
public record Allocation(
        OrderNumber order,
        int line,
        String route,
        String customer,
        String product,
        int packs,
        LotCode lot,
        boolean fromStock,
        LocalDate deliveryDate,
        int daysLeft) {}
