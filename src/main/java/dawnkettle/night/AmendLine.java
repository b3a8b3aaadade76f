package dawnkettle.night;

import dawnkettle.book.Amendment;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import java.util.List;

/** Sets what a line of the book stands for from now on; a standing order's line is written out first. */
record AmendLine(Office office, OrderLine.Source source, String origin) {
    /** @return whether the book of its day is closed, so that it counts as late */
    boolean to(OrderBook book, OrderLine line, int packs) {
        if (!book.isTaken(line.order(), line.line())) office.ledger().orders().add(List.of(written(line)));
        boolean late = book.productionDate(line).filter(book::isClosed).isPresent();
        office.ledger()
                .orders()
                .amend(List.of(new Amendment(line.order(), line.line(), packs, source, origin, office.now(), late)));
        return late;
    }

    private OrderLine written(OrderLine standing) {
        return standing.takenAs(OrderLine.Source.STANDING, origin, office.now());
    }
}
