package dawnkettle.night;

import dawnkettle.book.Amendment;
import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.plan.Allowances.LateDay;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What came after the soak calls of the making days in the ledger: up to their close by the times at which orders were
 * taken, and after it. Standing lines were known; a line cancelled before the close is not counted.
 */
final class HistoryAfterCall {
    private final Office office;

    private record Ref(OrderNumber order, int line) {}

    private record Key(LocalDate day, String product) {}

    HistoryAfterCall(Office office) {
        this.office = office;
    }

    /** Packs by product and earlier making day, 0 where nothing came. */
    List<LateDay> packs(LocalDate before) {
        Map<Key, Integer> more = beforeClose(before);
        return new PastWeeks(office.ledger(), office.shop())
                .lateDays().stream()
                        .filter(day -> day.productionDate().isBefore(before))
                        .map(day -> new LateDay(
                                day.product(),
                                day.productionDate(),
                                day.packs() + more.getOrDefault(new Key(day.productionDate(), day.product()), 0)))
                        .toList();
    }

    private Map<Key, Integer> beforeClose(LocalDate before) {
        Map<Ref, OrderLine> lines = new HashMap<>();
        for (OrderLine line : office.ledger().orders().lines(LocalDate.EPOCH))
            lines.putIfAbsent(new Ref(line.order(), line.line()), line);
        Map<Ref, TreeMap<Instant, Integer>> amended = new HashMap<>();
        for (Amendment one : office.ledger().orders().amendments(LocalDate.EPOCH))
            amended.computeIfAbsent(new Ref(one.order(), one.line()), any -> new TreeMap<>())
                    .put(one.takenAt(), one.packs());
        Map<Key, Integer> more = new HashMap<>();
        for (ClosedBook close : office.ledger().closes().holding(LocalDate.EPOCH)) {
            if (!close.productionDate().isBefore(before)) continue;
            Instant call = office.timetable().soakCall(close.productionDate());
            for (BookLine line : close.lines()) {
                Ref ref = new Ref(line.order(), line.line());
                if (!lines.containsKey(ref)) continue;
                int came = line.packs() - known(lines.get(ref), amended.getOrDefault(ref, new TreeMap<>()), call);
                if (came > 0) more.merge(new Key(close.productionDate(), line.product()), came, Integer::sum);
            }
        }
        return more;
    }

    /** What a line stood for when the call was made. */
    private static int known(OrderLine line, TreeMap<Instant, Integer> amended, Instant call) {
        if (line.takenAt().isAfter(call)) return 0;
        var last = amended.floorEntry(call);
        return last == null ? line.packs() : last.getValue();
    }
}
