package dawnkettle.night;

import dawnkettle.book.Amendment;
import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What came after the closes: lines that the closed book does not hold, and what others were changed to afterwards; a
 * cancelled pack takes one away. Days whose orders are not in the ledger come from records.
 */
final class HistoryOfLateOrders {
    private final Ledger ledger;
    private final Shop shop;
    private final Map<LocalDate, Map<String, Integer>> packs = new HashMap<>();

    private record Ref(OrderNumber order, int line) {}

    HistoryOfLateOrders(Ledger ledger, Shop shop) {
        this.ledger = ledger;
        this.shop = shop;
    }

    /** By making day and product; a day that was closed without anything late is there, with nothing in it. */
    Map<LocalDate, Map<String, Integer>> packs() {
        List<ClosedBook> closes = ledger.closes().holding(LocalDate.EPOCH);
        closes.forEach(close -> packs.put(close.productionDate(), new HashMap<>()));
        if (!closes.isEmpty()) ordered(closes);
        for (Recorded recorded : ledger.records().all(Fact.Kind.CAME_LATE))
            if (recorded.fact() instanceof Fact.CameLate late) add(late.productionDate(), late.product(), late.packs());
        return packs;
    }

    private void ordered(List<ClosedBook> closes) {
        List<OrderLine> lines = ledger.orders().lines(LocalDate.EPOCH);
        Map<Ref, Integer> now = new HashMap<>();
        for (Amendment amendment : ledger.orders().amendments(LocalDate.EPOCH))
            now.put(new Ref(amendment.order(), amendment.line()), amendment.packs());
        Map<Ref, Integer> closed = new HashMap<>();
        for (ClosedBook close : closes)
            for (BookLine line : close.lines()) closed.put(new Ref(line.order(), line.line()), line.packs());
        OrderBook book = new OrderBook(shop, lines, List.of(), List.of(), closes);
        Set<Ref> seen = new HashSet<>();
        for (OrderLine line : lines) {
            Ref ref = new Ref(line.order(), line.line());
            if (!seen.add(ref)) continue;
            int more = now.getOrDefault(ref, line.packs()) - closed.getOrDefault(ref, 0);
            book.productionDate(line).filter(book::isClosed).ifPresent(day -> add(day, line.product(), more));
        }
    }

    private void add(LocalDate day, String product, int more) {
        if (more != 0) packs.computeIfAbsent(day, any -> new HashMap<>()).merge(product, more, Integer::sum);
    }
}
