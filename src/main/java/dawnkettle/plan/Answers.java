package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.book.OrderLine;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/** What becomes of every line of the book: the answer to who ordered, the demand it makes, the lots it gets. */
final class Answers {
    private final List<OpenLine> lines;
    private final Function<Brew, LotCode> lotOf;
    private final Function<Brew, LocalDate> packDateOf;

    Answers(List<OpenLine> lines, Function<Brew, LotCode> lotOf, Function<Brew, LocalDate> packDateOf) {
        this.lines = lines;
        this.lotOf = lotOf;
        this.packDateOf = packDateOf;
    }

    List<PlannedOrder> orders() {
        return lines.stream()
                .filter(line -> line.line.isPresent())
                .map(line -> new PlannedOrder(line.line.get(), line.given(), line.declined() > 0 ? line.reason() : ""))
                .toList();
    }

    List<DemandLine> demand() {
        Map<String, List<OpenLine>> byKey = new TreeMap<>();
        for (OpenLine line : lines)
            byKey.computeIfAbsent(line.product.code() + " " + line.deliveryDate, key -> new ArrayList<>())
                    .add(line);
        return byKey.values().stream().map(Answers::demand).toList();
    }

    private static DemandLine demand(List<OpenLine> lines) {
        int firm = 0;
        int standing = 0;
        int allowance = 0;
        int stock = 0;
        int declined = 0;
        for (OpenLine line : lines) {
            if (line.line.isEmpty()) allowance += line.packs;
            else if (line.line.get().source() == OrderLine.Source.STANDING) standing += line.packs;
            else firm += line.packs;
            stock += line.fromStock();
            declined += line.declined();
        }
        OpenLine any = lines.get(0);
        int toMake = firm + standing + allowance - stock - declined;
        return new DemandLine(
                any.product.code(),
                any.deliveryDate,
                firm,
                standing,
                allowance,
                stock,
                declined,
                toMake,
                any.product.net().times(toMake));
    }

    List<Allocation> allocation() {
        List<Allocation> all = new ArrayList<>();
        for (OpenLine line : lines) {
            if (line.line.isEmpty()) continue;
            Map<LotCode, Allocation> byLot = new TreeMap<>();
            for (OpenLine.Gift gift : line.gifts) {
                Allocation one = allocation(line, line.line.get(), gift);
                byLot.merge(one.lot(), one, Answers::together);
            }
            all.addAll(byLot.values());
        }
        all.sort(Comparator.comparing(Allocation::deliveryDate)
                .thenComparing(Allocation::route)
                .thenComparing(Allocation::customer)
                .thenComparing(Allocation::order)
                .thenComparing(Allocation::line)
                .thenComparing(Allocation::lot));
        return all;
    }

    /** A line that is served twice from one lot, its fair share first and then what was left, gets it in one row. */
    private static Allocation together(Allocation one, Allocation more) {
        return new Allocation(
                one.order(),
                one.line(),
                one.route(),
                one.customer(),
                one.product(),
                one.packs() + more.packs(),
                one.lot(),
                one.fromStock(),
                one.deliveryDate(),
                one.daysLeft());
    }

    private Allocation allocation(OpenLine open, BookLine line, OpenLine.Gift gift) {
        LocalDate bestBefore = gift.stockLot()
                .map(lot -> lot.bestBefore())
                .orElseGet(() -> open.product
                        .keeping()
                        .bestBefore(packDateOf.apply(gift.brew().orElseThrow())));
        return new Allocation(
                line.order(),
                line.line(),
                line.route(),
                line.customer(),
                line.product(),
                gift.packs(),
                gift.stockLot()
                        .map(lot -> lot.lot())
                        .orElseGet(() -> lotOf.apply(gift.brew().orElseThrow())),
                gift.stockLot().isPresent(),
                line.deliveryDate(),
                (int) ChronoUnit.DAYS.between(line.deliveryDate(), bestBefore));
    }

    List<Shortage> shortages() {
        Map<String, Shortage> byKey = new TreeMap<>();
        for (OpenLine line : lines) {
            if (line.line.isEmpty() || line.declined() == 0) continue;
            Shortage one = new Shortage(line.product.code(), line.declined(), line.reason());
            byKey.merge(
                    one.product() + " " + one.reason(),
                    one,
                    (a, b) -> new Shortage(a.product(), a.packs() + b.packs(), a.reason()));
        }
        return List.copyOf(byKey.values());
    }
}
