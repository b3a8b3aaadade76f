package dawnkettle.plan;

import dawnkettle.book.ClosedBook;
import dawnkettle.floor.Budget;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.stock.BeanLot;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * All that a plan is computed from besides the shop.
 *
 * @param book the closed book of the production day
 * @param ahead lines already in the book for the making days after it, as far as they are known
 * @param allowances packs that usually come after the close, by product and delivery date
 * @param stock packs in the cold room that are not promised
 * @param beans bought lots that are here, oldest first
 * @param soakCall what was put to soak before the close; empty where nothing had to be
 * @param before the plan that this one replaces, for a revision
 * @param frozen facts of the world: tubs filled, batches started, lots labelled, routes gone
 */
public record Evening(
        ClosedBook book,
        List<dawnkettle.book.BookLine> ahead,
        List<Allowance> allowances,
        List<StockLot> stock,
        List<BeanLot> beans,
        Temperatures temperatures,
        Optional<SoakCall> soakCall,
        Optional<DayPlan> before,
        List<Frozen> frozen,
        Instant now,
        Budget budget) {
    public Evening {
        ahead = List.copyOf(ahead);
        allowances = List.copyOf(allowances);
        stock = List.copyOf(stock);
        beans = List.copyOf(beans);
        frozen = List.copyOf(frozen);
    }

    /** Packs of a product for a delivery date that usually come after the close. */
    public record Allowance(String product, java.time.LocalDate deliveryDate, int packs) {}
}
