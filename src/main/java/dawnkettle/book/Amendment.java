package dawnkettle.book;

import java.time.Instant;

/**
 * A change to a line: the packs it stands for from now on. The line itself stays as it was.
 *
 * @param packs new number of packs; 0 cancels
 * @param late whether it came after the close of the day it touches
 */
public record Amendment(
        OrderNumber order, int line, int packs, OrderLine.Source source, String origin, Instant takenAt, boolean late) {
    public Amendment {
        if (packs < 0) throw new IllegalArgumentException("packs must be 0 or more, not " + packs);
    }
}
