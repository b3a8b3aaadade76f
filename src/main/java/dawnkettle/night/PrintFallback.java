package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.sheet.CountSheet;
import dawnkettle.sheet.Fallback;
import dawnkettle.sheet.FallbackSheet;
import dawnkettle.sheet.SheetStyle;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Puts into the tray what is made when no plan comes, the same weekday of last week and the standing orders; and the sheet
 * on which the cold room is counted.
 */
final class PrintFallback implements Work {
    /** A day's lots are delivered on it and on the days before the next making day. */
    private static final int DAYS_ON_THE_WAY = 4;

    private final Office office;
    private final SheetEffects effects;

    PrintFallback(Office office, SheetEffects effects) {
        this.office = office;
        this.effects = effects;
    }

    @Override
    public String run(LocalDate productionDate) {
        LocalDate lastWeek = productionDate.minusWeeks(1);
        Map<String, int[]> packs = new TreeMap<>();
        Optional<ClosedBook> closed = office.ledger().closes().find(lastWeek);
        closed.map(ClosedBook::lines).orElse(List.of()).forEach(line -> count(packs, line)[0] += line.packs());
        if (closed.isEmpty()) countDelivered(packs, lastWeek);
        office.book().bookFor(productionDate).stream()
                .filter(line -> line.source() == OrderLine.Source.STANDING)
                .forEach(line -> count(packs, line)[1] += line.packs());
        List<Fallback.Line> lines = packs.entrySet().stream()
                .map(entry -> line(entry.getKey().split(" "), entry.getValue()))
                .toList();
        Fallback fallback = new Fallback(productionDate, lastWeek, office.now(), lines);
        SheetDate date = SheetDate.of(office, productionDate);
        SheetStyle style = date.style(office.edges().paper().style());
        effects.print(
                date.set("fallback " + productionDate),
                productionDate,
                List.of(
                        FallbackSheet.of(fallback, office.shop(), style),
                        CountSheet.of(stocktake(productionDate), office.shop(), style)));
        return "the fallback sheet " + FallbackSheet.number(productionDate) + " and the count sheet lie in the tray";
    }

    /** What should be in the cold room and the store this afternoon. */
    private CountSheet.Stocktake stocktake(LocalDate productionDate) {
        Instant now = office.now();
        return new CountSheet.Stocktake(
                now.atZone(office.shop().house().zone()).toLocalDate(),
                now,
                office.ledger().stock().finished(office.shop(), productionDate),
                office.ledger().stock().beans(office.shop(), productionDate, now));
    }

    /** Where there was no close that day, what was delivered of its lots. */
    private void countDelivered(Map<String, int[]> packs, LocalDate day) {
        Instant from = day.atStartOfDay(office.shop().house().zone()).toInstant();
        for (Recorded recorded :
                office.ledger().records().of(Fact.Kind.DELIVERED, from, from.plus(Duration.ofDays(DAYS_ON_THE_WAY))))
            if (recorded.fact() instanceof Fact.Delivered given
                    && given.lot().productionDate().equals(day))
                office.shop()
                        .findCustomer(given.customer())
                        .ifPresent(customer -> packs.computeIfAbsent(
                                                customer.route() + " " + customer.code() + " " + given.product(),
                                                key -> new int[2])[0] +=
                                given.packs());
    }

    private static int[] count(Map<String, int[]> packs, BookLine line) {
        return packs.computeIfAbsent(line.route() + " " + line.customer() + " " + line.product(), key -> new int[2]);
    }

    private static Fallback.Line line(String[] key, int[] packs) {
        return new Fallback.Line(key[0], key[1], key[2], packs[0], packs[1]);
    }
}
