package dawnkettle.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class OrderBookTest {
    private static final LocalDate THURSDAY = LocalDate.of(2026, 12, 3);
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final LocalDate SATURDAY = LocalDate.of(2026, 12, 5);
    private static final Instant NOON = Instant.parse("2026-12-03T17:00:00Z");
    private static final Instant CUT_OFF = Instant.parse("2026-12-03T20:00:00Z");
    private static final StandingOrder EVERY_FRIDAY =
            new StandingOrder("HARB", "FIRM-12", DayOfWeek.FRIDAY, 24, LocalDate.of(2026, 1, 1), Optional.empty());
    private static final OrderNumber STANDING = new OrderNumber("S-HARB-20261204");

    private final Shop shop = SmallShop.open();

    @Test
    void a_line_stands_in_the_book_of_its_making_date() {
        OrderBook book = book(List.of(line("A1", 1, "HARB", 12, FRIDAY)), List.of());

        assertThat(book.bookFor(THURSDAY))
                .containsExactly(new BookLine(
                        new OrderNumber("A1"),
                        1,
                        "HARB",
                        "early",
                        "FIRM-12",
                        12,
                        FRIDAY,
                        THURSDAY,
                        OrderLine.Source.FILE,
                        false));
        assertThat(book.bookFor(FRIDAY)).isEmpty();
    }

    @Test
    void amendments_hold_in_the_order_they_were_taken_and_nought_cancels() {
        List<OrderLine> lines = List.of(line("A1", 1, "HARB", 12, FRIDAY), line("A2", 1, "QUAY", 6, FRIDAY));
        OrderBook book = book(lines, List.of(amendment("A1", 1, 30), amendment("A1", 1, 18), amendment("A2", 1, 0)));

        assertThat(packs(book.bookFor(THURSDAY))).containsExactly("A1/1 18", "A2/1 0");
        assertThat(book.close(THURSDAY, CUT_OFF).lines())
                .extracting(BookLine::packs)
                .containsExactly(18);
    }

    @Test
    void a_standing_order_is_a_line_of_each_of_its_days_and_an_order_comes_on_top() {
        OrderBook book = new OrderBook(
                shop, List.of(line("A1", 1, "HARB", 12, FRIDAY)), List.of(), List.of(EVERY_FRIDAY), List.of());

        assertThat(packs(book.bookFor(THURSDAY))).containsExactly("A1/1 12", "S-HARB-20261204/1 24");
        assertThat(packs(book.bookFor(THURSDAY.plusWeeks(1)))).containsExactly("S-HARB-20261211/1 24");
        assertThat(book.bookFor(FRIDAY)).isEmpty();
    }

    @Test
    void a_standing_order_is_cancelled_for_one_day_by_its_own_number() {
        Amendment cancel = new Amendment(STANDING, 1, 0, OrderLine.Source.MAIL, "mail", NOON, false);
        OrderBook book = new OrderBook(shop, List.of(), List.of(cancel), List.of(EVERY_FRIDAY), List.of());

        assertThat(book.stray()).isEmpty();
        assertThat(book.close(THURSDAY, CUT_OFF).lines()).isEmpty();
        assertThat(book.close(THURSDAY.plusWeeks(1), CUT_OFF).packs()).isEqualTo(24);
    }

    @Test
    void a_standing_line_once_written_keeps_its_number_when_the_product_list_is_reordered() {
        OrderLine written = new OrderBook(shop, List.of(), List.of(), List.of(EVERY_FRIDAY), List.of())
                .findLine(STANDING, 1)
                .orElseThrow();
        Amendment less = new Amendment(STANDING, 1, 6, OrderLine.Source.FILE, "f", NOON, false);
        List<Product> reordered = new ArrayList<>(SmallShop.PRODUCTS);
        reordered.add(0, reordered.remove(1));
        StandingOrder soft =
                new StandingOrder("HARB", "SOFT-6", DayOfWeek.FRIDAY, 10, LocalDate.of(2026, 1, 1), Optional.empty());

        OrderBook book = new OrderBook(
                SmallShop.with(reordered, Map.of()),
                List.of(written),
                List.of(less),
                List.of(EVERY_FRIDAY, soft),
                List.of());

        assertThat(book.bookFor(THURSDAY))
                .extracting(BookLine::product, BookLine::line, BookLine::packs)
                .containsExactly(tuple("FIRM-12", 1, 6), tuple("SOFT-6", 4, 10));
    }

    @Test
    void a_closed_day_stays_closed_and_what_comes_after_is_late() {
        List<OrderLine> lines = List.of(line("A1", 1, "HARB", 12, FRIDAY), line("A2", 1, "QUAY", 6, FRIDAY));
        ClosedBook closed = book(lines, List.of()).close(THURSDAY, CUT_OFF);
        List<OrderLine> more = new ArrayList<>(lines);
        more.add(line("A3", 1, "QUAY", 3, FRIDAY));

        OrderBook book = new OrderBook(
                shop, more, List.of(amendment("A1", 1, 18), amendment("A2", 1, 6)), List.of(), List.of(closed));

        assertThat(book.close(THURSDAY, CUT_OFF.plusSeconds(60))).isEqualTo(closed);
        assertThat(packs(book.bookFor(THURSDAY))).containsExactly("A1/1 18", "A2/1 6", "A3/1 3");
        assertThat(packs(book.afterClose(THURSDAY))).containsExactly("A1/1 18", "A3/1 3");
    }

    @Test
    void a_line_cancelled_before_the_close_is_not_late() {
        List<OrderLine> lines = List.of(line("A1", 1, "HARB", 12, FRIDAY));
        List<Amendment> cancelled = List.of(amendment("A1", 1, 0));
        ClosedBook closed = book(lines, cancelled).close(THURSDAY, CUT_OFF);

        OrderBook book = new OrderBook(shop, lines, cancelled, List.of(), List.of(closed));

        assertThat(book.afterClose(THURSDAY)).isEmpty();
    }

    @Test
    void after_the_close_standing_orders_are_those_of_the_close() {
        ClosedBook closed =
                new OrderBook(shop, List.of(), List.of(), List.of(EVERY_FRIDAY), List.of()).close(THURSDAY, CUT_OFF);

        OrderBook withoutIt = new OrderBook(shop, List.of(), List.of(), List.of(), List.of(closed));

        assertThat(withoutIt.afterClose(THURSDAY)).isEmpty();
        assertThat(withoutIt.bookFor(THURSDAY)).isEqualTo(closed.lines());
    }

    @Test
    void a_line_stays_with_the_day_that_closed_it_when_the_calendar_changes() {
        List<OrderLine> lines = List.of(line("A1", 1, "HARB", 12, SATURDAY));
        ClosedBook friday = book(lines, List.of()).close(FRIDAY, CUT_OFF);
        Shop closedFriday = SmallShop.closedOn(Map.of(FRIDAY, "a burst pipe"));

        OrderBook book = new OrderBook(
                closedFriday,
                lines,
                List.of(),
                List.of(new StandingOrder(
                        "QUAY", "FIRM-12", DayOfWeek.SATURDAY, 5, LocalDate.of(2026, 1, 1), Optional.empty())),
                List.of(friday));

        assertThat(packs(book.bookFor(FRIDAY))).containsExactly("A1/1 12");
        assertThat(packs(book.bookFor(THURSDAY))).containsExactly("S-QUAY-20261205/1 5");
    }

    @Test
    void the_same_line_twice_counts_once_and_other_content_is_a_conflict_that_changes_nothing() {
        OrderLine first = line("A1", 1, "HARB", 12, FRIDAY);
        OrderLine other = line("A1", 1, "HARB", 30, FRIDAY);

        OrderBook book = book(List.of(first, first, other), List.of());

        assertThat(packs(book.bookFor(THURSDAY))).containsExactly("A1/1 12");
        assertThat(book.conflicts()).containsExactly(new Conflict(first, other));
    }

    @Test
    void a_line_that_no_day_can_serve_is_named_and_so_is_an_amendment_of_nothing() {
        OrderLine gone =
                new OrderLine(new OrderNumber("A1"), 1, "HARB", "GONE-1", 4, FRIDAY, OrderLine.Source.FILE, "f", NOON);
        OrderLine sunday = line("A2", 1, "HARB", 4, LocalDate.of(2026, 12, 6));

        OrderBook book = book(List.of(gone, sunday), List.of(amendment("X9", 1, 3)));

        assertThat(book.unplaced())
                .extracting(Unplaced::why)
                .containsExactly(
                        "product \"GONE-1\" is no longer made",
                        "Sunday 2026-12-06 is not a delivery day of route \"early\"");
        assertThat(book.stray()).extracting(Amendment::packs).containsExactly(3);
    }

    /** Every pack ordered stands in the book of exactly one day, or is named as unplaced, whatever was closed when. */
    @Property(tries = 200)
    void packs_are_conserved(@ForAll("takings") List<Taking> takings, @ForAll("closings") Set<Integer> closings) {
        List<OrderLine> lines = new ArrayList<>();
        List<Amendment> amendments = new ArrayList<>();
        List<ClosedBook> closed = new ArrayList<>();
        Map<Integer, Integer> expected = new HashMap<>();
        for (int i = 0; i < takings.size(); i++) {
            Taking taking = takings.get(i);
            lines.add(taking.line(i));
            expected.put(i, taking.packs());
            if (taking.amends() >= 0) {
                int of = taking.amends() % (i + 1);
                amendments.add(amendment("R" + of, 1, taking.packs() - 1));
                expected.put(of, taking.packs() - 1);
            }
            if (closings.contains(i)) {
                LocalDate day = THURSDAY.plusDays(i % 10);
                OrderBook soFar = new OrderBook(shop, lines, amendments, List.of(EVERY_FRIDAY), closed);
                if (!soFar.isClosed(day)) closed.add(soFar.close(day, CUT_OFF));
            }
        }

        OrderBook book = new OrderBook(shop, lines, amendments, List.of(EVERY_FRIDAY), closed);
        List<BookLine> all = THURSDAY.minusDays(14)
                .datesUntil(THURSDAY.plusDays(14))
                .flatMap(day -> book.bookFor(day).stream())
                .filter(line -> line.source() == OrderLine.Source.FILE)
                .toList();

        long placed = all.stream().mapToLong(BookLine::packs).sum();
        long unplaced = book.unplaced().stream().mapToLong(Unplaced::packs).sum();
        assertThat(placed + unplaced)
                .isEqualTo(expected.values().stream().mapToLong(packs -> packs).sum());
        assertThat(new HashSet<>(packs(all))).hasSameSizeAs(all);
        for (ClosedBook day : closed)
            assertThat(book.bookFor(day.productionDate()).stream()
                            .filter(line -> !line.late())
                            .mapToLong(BookLine::packs)
                            .sum())
                    .isLessThanOrEqualTo(day.packs());
    }

    /** One line that comes in, and the earlier line that it amends as well; -1 for none. */
    record Taking(String customer, String product, int packs, int dayOffset, int amends) {
        OrderLine line(int number) {
            return new OrderLine(
                    new OrderNumber("R" + number),
                    1,
                    customer,
                    product,
                    packs,
                    THURSDAY.plusDays(dayOffset),
                    OrderLine.Source.FILE,
                    "f",
                    NOON);
        }
    }

    @Provide
    Arbitrary<List<Taking>> takings() {
        return Combinators.combine(
                        Arbitraries.of("HARB", "MILL", "QUAY"),
                        Arbitraries.of("FIRM-12", "SOFT-6", "FRIED-8"),
                        Arbitraries.integers().between(1, 50),
                        Arbitraries.integers().between(0, 9),
                        Arbitraries.integers().between(-1, 40))
                .as(Taking::new)
                .list()
                .ofMaxSize(40);
    }

    @Provide
    Arbitrary<Set<Integer>> closings() {
        return Arbitraries.integers().between(0, 39).set().ofMaxSize(6);
    }

    private OrderBook book(List<OrderLine> lines, List<Amendment> amendments) {
        return new OrderBook(shop, lines, amendments, List.of(), List.of());
    }

    private static OrderLine line(String order, int line, String customer, int packs, LocalDate delivery) {
        return new OrderLine(
                new OrderNumber(order),
                line,
                customer,
                "FIRM-12",
                packs,
                delivery,
                OrderLine.Source.FILE,
                "orders.csv",
                NOON);
    }

    private static Amendment amendment(String order, int line, int packs) {
        return new Amendment(new OrderNumber(order), line, packs, OrderLine.Source.FILE, "more.csv", NOON, false);
    }

    private static List<String> packs(List<BookLine> lines) {
        return lines.stream()
                .map(line -> line.order() + "/" + line.line() + " " + line.packs())
                .toList();
    }
}
