package dawnkettle.book;

import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The order book as it stands: every line and amendment ever taken, the standing orders, and the days already closed.
 *
 * <p>What holds:
 *
 * <ul>
 *   <li>A line counts once. The same order and line again with the same content is the same line; with other content it
 *       is a {@link Conflict} and the first stays.
 *   <li>Amendments set the packs of a line and hold in the order they were taken; the last one stands.
 *   <li>A standing order is a line of each delivery day. An ordinary line of the same customer, product and day comes
 *       <em>on top</em> of it; to change or cancel the standing order itself, amend its own number.
 *   <li>A line belongs to the day whose close holds it, whatever becomes of the calendar later. After a day's close its
 *       standing orders are those of the close.
 *   <li>What differs from the close of its day is late.
 * </ul>
 */
public final class OrderBook {
    private static final Comparator<BookLine> IN_BOOK_ORDER = Comparator.comparing(BookLine::deliveryDate)
            .thenComparing(BookLine::route)
            .thenComparing(BookLine::customer)
            .thenComparing(BookLine::order)
            .thenComparingInt(BookLine::line);

    private final Shop shop;
    private final MakingDates dates;
    private final List<Amendment> amendments;
    private final Map<Ref, OrderLine> lines = new LinkedHashMap<>();
    private final List<Conflict> conflicts = new ArrayList<>();
    private final Map<Ref, Integer> amended = new HashMap<>();
    private final Map<LocalDate, ClosedBook> closed = new HashMap<>();
    private final Map<Ref, BookLine> frozen = new LinkedHashMap<>();
    private final StandingLines standing;

    /** One line of one order. */
    private record Ref(OrderNumber order, int line) {}

    /**
     * @param lines every line taken, in the order they were taken
     * @param amendments every amendment taken, in the order they were taken
     * @param closed the days already closed
     */
    public OrderBook(
            Shop shop,
            List<OrderLine> lines,
            List<Amendment> amendments,
            List<StandingOrder> standing,
            List<ClosedBook> closed) {
        this.shop = shop;
        this.dates = new MakingDates(shop.calendar());
        this.amendments = List.copyOf(amendments);
        lines.forEach(this::take);
        for (Amendment amendment : amendments)
            amended.put(new Ref(amendment.order(), amendment.line()), amendment.packs());
        for (ClosedBook day : closed) {
            this.closed.put(day.productionDate(), day);
            for (BookLine line : day.lines()) frozen.put(new Ref(line.order(), line.line()), line);
        }
        this.standing = new StandingLines(shop, standing, standingLinesWritten());
    }

    /** The lines made on a day as they stand now, cancelled ones with 0 packs, in the order of {@link ClosedBook}. */
    public List<BookLine> bookFor(LocalDate productionDate) {
        Stream<OrderLine> ordered = lines.values().stream()
                .filter(line ->
                        productionDate(line).filter(productionDate::equals).isPresent());
        Stream<OrderLine> recurring = isClosed(productionDate)
                ? frozen.values().stream()
                        .filter(line -> line.makingDate().equals(productionDate)
                                && !lines.containsKey(new Ref(line.order(), line.line())))
                        .map(this::asTaken)
                : standing.madeOn(productionDate).stream();
        return Stream.concat(ordered, recurring)
                .map(line -> standsNow(line, productionDate))
                .sorted(IN_BOOK_ORDER)
                .toList();
    }

    /** Freezes a day; a day that is closed already stays as it was closed. */
    public ClosedBook close(LocalDate productionDate, Instant closedAt) {
        return findClosed(productionDate)
                .orElseGet(() -> new ClosedBook(
                        productionDate,
                        closedAt,
                        bookFor(productionDate).stream()
                                .filter(line -> line.packs() > 0)
                                .toList()));
    }

    /** What came after the close of a day, as it stands now: new lines, changed lines, cancelled lines with 0 packs. */
    public List<BookLine> afterClose(LocalDate productionDate) {
        return bookFor(productionDate).stream().filter(BookLine::late).toList();
    }

    public boolean isClosed(LocalDate productionDate) {
        return closed.containsKey(productionDate);
    }

    public Optional<ClosedBook> findClosed(LocalDate productionDate) {
        return Optional.ofNullable(closed.get(productionDate));
    }

    /** The day a line is made on; empty where none can serve it. */
    public Optional<LocalDate> productionDate(OrderLine line) {
        BookLine atClose = frozen.get(new Ref(line.order(), line.line()));
        if (atClose != null) return Optional.of(atClose.makingDate());
        return whyUnplaced(line).isPresent()
                ? Optional.empty()
                : dates.makingDate(line.deliveryDate(), route(line), shop.product(line.product()));
    }

    /** The line of an order as it was taken, also one of a standing order that nobody has touched yet. */
    public Optional<OrderLine> findLine(OrderNumber order, int line) {
        Ref ref = new Ref(order, line);
        if (lines.containsKey(ref)) return Optional.of(lines.get(ref));
        if (frozen.containsKey(ref)) return Optional.of(asTaken(frozen.get(ref)));
        return customerOfStanding(order)
                .flatMap(customer -> deliveryOfStanding(order)
                        .flatMap(day -> standing.deliveredTo(customer, day).stream()
                                .filter(each -> each.line() == line)
                                .findFirst()));
    }

    /** Whether a line was taken or amended by itself, not only written out from a standing order. */
    public boolean isTaken(OrderNumber order, int line) {
        return lines.containsKey(new Ref(order, line));
    }

    /** Lines that came again with other content. */
    public List<Conflict> conflicts() {
        return List.copyOf(conflicts);
    }

    /** Lines with packs that no making day can serve any more. */
    public List<Unplaced> unplaced() {
        List<Unplaced> unplaced = new ArrayList<>();
        for (Map.Entry<Ref, OrderLine> each : lines.entrySet()) {
            OrderLine line = each.getValue();
            int packs = packsNow(line);
            if (packs > 0 && !frozen.containsKey(each.getKey()))
                whyUnplaced(line).ifPresent(why -> unplaced.add(new Unplaced(line, packs, why)));
        }
        return unplaced;
    }

    /** Amendments of lines that the book does not have. */
    public List<Amendment> stray() {
        return amendments.stream()
                .filter(amendment ->
                        findLine(amendment.order(), amendment.line()).isEmpty())
                .toList();
    }

    private void take(OrderLine line) {
        OrderLine first = lines.putIfAbsent(new Ref(line.order(), line.line()), line);
        if (first != null && !sameContent(first, line)) conflicts.add(new Conflict(first, line));
    }

    /** Whether two lines ask for the same, wherever they came from. */
    public static boolean sameContent(OrderLine one, OrderLine other) {
        return one.customer().equals(other.customer())
                && one.product().equals(other.product())
                && one.packs() == other.packs()
                && one.deliveryDate().equals(other.deliveryDate());
    }

    private BookLine standsNow(OrderLine line, LocalDate productionDate) {
        BookLine atClose = frozen.get(new Ref(line.order(), line.line()));
        int packs = packsNow(line);
        int closedPacks = atClose == null ? 0 : atClose.packs();
        return new BookLine(
                line.order(),
                line.line(),
                line.customer(),
                atClose == null ? route(line).code() : atClose.route(),
                line.product(),
                packs,
                line.deliveryDate(),
                productionDate,
                line.source(),
                isClosed(productionDate) && packs != closedPacks);
    }

    private int packsNow(OrderLine line) {
        return amended.getOrDefault(new Ref(line.order(), line.line()), line.packs());
    }

    private Optional<String> whyUnplaced(OrderLine line) {
        Optional<Product> product = shop.findProduct(line.product());
        if (product.isEmpty()) return Optional.of("product \"" + line.product() + "\" is no longer made");
        if (shop.findCustomer(line.customer()).isEmpty())
            return Optional.of("customer \"" + line.customer() + "\" is no longer in the list");
        return dates.whyNot(line.deliveryDate(), route(line), product.get());
    }

    private Route route(OrderLine line) {
        return shop.route(shop.customer(line.customer()).route());
    }

    private List<OrderLine> standingLinesWritten() {
        return Stream.concat(lines.values().stream(), frozen.values().stream().map(this::asTaken))
                .filter(line -> line.source() == OrderLine.Source.STANDING)
                .toList();
    }

    private OrderLine asTaken(BookLine line) {
        return new OrderLine(
                line.order(),
                line.line(),
                line.customer(),
                line.product(),
                line.packs(),
                line.deliveryDate(),
                line.source(),
                "close of " + line.makingDate(),
                closed.get(line.makingDate()).closedAt());
    }

    private Optional<Customer> customerOfStanding(OrderNumber order) {
        return shop.customers().stream()
                .filter(customer -> order.text().length()
                                == "S--".length() + 8 + customer.code().length()
                        && order.text().startsWith("S-" + customer.code() + "-"))
                .findFirst();
    }

    private static Optional<LocalDate> deliveryOfStanding(OrderNumber order) {
        String digits = order.text().substring(order.text().length() - 8);
        try {
            return Optional.of(LocalDate.parse(digits, java.time.format.DateTimeFormatter.BASIC_ISO_DATE));
        } catch (java.time.DateTimeException notADay) {
            return Optional.empty();
        }
    }
}
