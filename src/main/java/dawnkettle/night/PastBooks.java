package dawnkettle.night;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.MakingDates;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.StandingOrder;
import dawnkettle.plan.Growth;
import dawnkettle.plan.Temperatures;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * The books of past making days: as they were closed; where only records are left, what was packed, shared among the
 * customers as the standing orders share it.
 */
public final class PastBooks {
    private static final String REBUILT = "PAST-";

    private final Office office;
    private final Shop shop;

    public PastBooks(Office office) {
        this.office = office;
        this.shop = office.shop();
    }

    /** Whether a day's book was rebuilt from records: all that was packed, due with the next van. */
    public static boolean isRebuilt(Growth.Day day) {
        return day.book().lines().stream().allMatch(line -> line.order().text().startsWith(REBUILT));
    }

    /** Making days of a stretch, the most packs first. */
    public List<Growth.Day> heaviestFirst(LocalDate fromInclusive, LocalDate untilExclusive) {
        Map<LocalDate, ClosedBook> books = new TreeMap<>();
        packed().forEach((day, packs) -> books.put(day, book(day, packs)));
        for (ClosedBook close : office.ledger().closes().holding(LocalDate.EPOCH))
            books.put(close.productionDate(), close);
        return books.values().stream()
                .filter(book -> !book.productionDate().isBefore(fromInclusive)
                        && book.productionDate().isBefore(untilExclusive)
                        && !book.lines().isEmpty())
                .sorted((a, b) -> a.packs() == b.packs()
                        ? a.productionDate().compareTo(b.productionDate())
                        : Long.compare(b.packs(), a.packs()))
                .map(this::day)
                .toList();
    }

    private Growth.Day day(ClosedBook book) {
        LocalDate day = book.productionDate();
        Temperatures norm = new Temperatures(
                shop.climate().room(day.getMonth()),
                shop.climate().tap(day.getMonth()),
                "norm of " + day.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH));
        return new Growth.Day(book, office.timetable().soakCall(day), norm);
    }

    private Map<LocalDate, Map<String, Integer>> packed() {
        Map<LocalDate, Map<String, Integer>> packed = new TreeMap<>();
        for (Recorded recorded : office.ledger().records().all(Fact.Kind.PACKED))
            if (recorded.fact() instanceof Fact.Packed filled
                    && shop.findProduct(filled.product()).isPresent())
                packed.computeIfAbsent(filled.lot().productionDate(), any -> new TreeMap<>())
                        .merge(filled.product(), filled.packs(), Integer::sum);
        return packed;
    }

    private ClosedBook book(LocalDate day, Map<String, Integer> packs) {
        List<BookLine> lines = new ArrayList<>();
        packs.forEach((code, count) -> lines.addAll(shared(day, shop.product(code), count, lines.size())));
        Instant closed = office.timetable().close(day);
        return new ClosedBook(day, closed, lines);
    }

    /** The packs of one product among those who take it every week and whose van can carry it from that day. */
    private List<BookLine> shared(LocalDate day, Product product, int packs, int from) {
        Map<Customer, Integer> weights = new LinkedHashMap<>();
        for (StandingOrder order : office.papers().standing())
            if (order.product().equals(product.code()))
                weights.merge(shop.customer(order.customer()), order.packs(), Integer::sum);
        if (weights.isEmpty()) shop.customers().forEach(customer -> weights.put(customer, 1));
        weights.keySet().removeIf(customer -> dates(day, customer, product).isEmpty());
        int left = packs;
        int weight = weights.values().stream().mapToInt(Integer::intValue).sum();
        List<BookLine> lines = new ArrayList<>();
        for (Map.Entry<Customer, Integer> one : weights.entrySet()) {
            int share = (int) ((long) left * one.getValue() / weight); // of what is left, so that all is shared out
            weight -= one.getValue();
            left -= share;
            if (share > 0) lines.add(line(day, one.getKey(), product, new Piece(share, from + lines.size() + 1)));
        }
        return lines;
    }

    private record Piece(int packs, int line) {}

    private BookLine line(LocalDate day, Customer customer, Product product, Piece piece) {
        return new BookLine(
                new OrderNumber(REBUILT + day),
                piece.line(),
                customer.code(),
                customer.route(),
                product.code(),
                piece.packs(),
                dates(day, customer, product).get(0),
                day,
                OrderLine.Source.STANDING,
                false);
    }

    private List<LocalDate> dates(LocalDate day, Customer customer, Product product) {
        Route route = shop.route(customer.route());
        return new MakingDates(shop.calendar()).deliveryDates(day, route, product);
    }
}
