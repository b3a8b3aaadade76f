package dawnkettle.book;

import java.time.LocalDate;

/**
 * A line as it stands now: what was ordered, with all amendments applied.
 *
 * @param packs packs wanted now; 0 where it was cancelled
 * @param makingDate day on which it is made
 * @param late whether it, or its last amendment, came after the close of that day
 */
public record BookLine(
        OrderNumber order,
        int line,
        String customer,
        String route,
        String product,
        int packs,
        LocalDate deliveryDate,
        LocalDate makingDate,
        OrderLine.Source source,
        boolean late) {}
