package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.plan.Heading.Frozen;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Vans that have gone carry what they left with, whatever the book says now. */
final class GoneVans {
    private final Evening evening;
    private final DayPlan before;

    GoneVans(Evening evening, DayPlan before) {
        this.evening = evening;
        this.before = before;
    }

    boolean carry(OpenLine line) {
        return line.line.filter(this::carry).isPresent();
    }

    private boolean carry(BookLine line) {
        return evening.committed().has(Frozen.Kind.ROUTE_GONE, Van.due(line.route(), line.deliveryDate()));
    }

    /** Stock as it was before this day's plan promised any of it, without what is held; the book with what has left. */
    Evening asItStands(DayClock clock) {
        return new Evening(
                new ClosedBook(clock.day(), evening.book().closedAt(), lines()),
                evening.outlook(),
                new Evening.Larder(
                        before.stock().stream()
                                .filter(lot -> !evening.larder().held().contains(lot.lot()))
                                .toList(),
                        evening.larder().beans(),
                        evening.larder().held()),
                evening.soakRoom(),
                evening.committed(),
                evening.now(),
                evening.budget());
    }

    private List<BookLine> lines() {
        List<BookLine> lines = new ArrayList<>();
        for (PlannedOrder order : before.orders()) if (carry(order.line())) lines.add(order.line());
        for (BookLine line : evening.book().lines())
            if (!carry(line)
                    || lines.stream().noneMatch(one -> one.order().equals(line.order()) && one.line() == line.line()))
                lines.add(line);
        return lines;
    }

    /** What had not been given when a van left does not catch up with it. */
    void leave(Wants wants) {
        for (OpenLine line : wants.lines) {
            if (!carry(line)) continue;
            Optional<PlannedOrder> was = before.orders().stream()
                    .filter(order -> order.line().equals(line.line.get()))
                    .findFirst();
            line.refuse(
                    line.open(),
                    was.map(PlannedOrder::reason)
                            .filter(reason -> !reason.isEmpty())
                            .orElse("van " + line.line.get().route() + " has gone"));
        }
    }
}
