package dawnkettle.plan;

import dawnkettle.book.BookLine;

/**
 * What becomes of one line of the book.
 *
 * @param plannedPacks packs it will get, from today's batches or from stock
 * @param reason why it gets less than it asked for; empty where it gets all
 */
public record PlannedOrder(BookLine line, int plannedPacks, String reason) {
    public PlannedOrder {
        if (plannedPacks < 0 || plannedPacks > line.packs())
            throw new IllegalArgumentException("planned packs lie between 0 and what was ordered");
    }

    public int declinedPacks() {
        return line.packs() - plannedPacks;
    }

    /** The word of the open form: planned, part or declined. */
    public String state() {
        if (declinedPacks() == 0) return "planned";
        return plannedPacks == 0 ? "declined" : "part";
    }
}
