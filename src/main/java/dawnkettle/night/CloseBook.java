package dawnkettle.night;

import dawnkettle.book.ClosedBook;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/** Freezes the book of a production day; what comes after is late. */
public final class CloseBook implements Work {
    private final Office office;

    public CloseBook(Office office) {
        this.office = office;
    }

    @Override
    public String run(LocalDate productionDate) {
        ClosedBook closed = office.ledger()
                .closes()
                .close(office.book().close(productionDate, office.now().truncatedTo(ChronoUnit.MILLIS)));
        return closed.lines().size() + " lines, " + closed.packs() + " packs are in the book";
    }
}
