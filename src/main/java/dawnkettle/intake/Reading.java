package dawnkettle.intake;

import dawnkettle.book.Amendment;
import dawnkettle.book.Conflict;
import dawnkettle.book.OrderLine;
import dawnkettle.trouble.Problem;
import java.util.List;

/**
 * What a dropped file comes to.
 *
 * @param lines new lines, to be added to the book in this order; a standing order that is amended is written out first
 * @param amendments to be added after them in this order
 * @param conflicts lines that the book has already with other content; kept so that somebody asks
 * @param problems everything that was not taken, and why
 */
public record Reading(
        List<OrderLine> lines, List<Amendment> amendments, List<Conflict> conflicts, List<Problem> problems, int same) {
    public Reading {
        lines = List.copyOf(lines);
        amendments = List.copyOf(amendments);
        conflicts = List.copyOf(conflicts);
        problems = List.copyOf(problems);
    }

    /** Whether nothing at all of the file counts: it ends among the refused. */
    public boolean isRefused() {
        return !problems.isEmpty() && lines.isEmpty() && amendments.isEmpty() && same == 0;
    }
}
