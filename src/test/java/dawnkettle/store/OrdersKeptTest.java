package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.SmallShop;
import dawnkettle.book.StandingOrder;
import dawnkettle.intake.DropFolder;
import dawnkettle.intake.Dropped;
import dawnkettle.intake.Reading;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a dropped file into the ledger and back as a book, as the night does it. */
class OrdersKeptTest {
    private static final String HEADER = "order,line,customer,product,packs,delivery_date,action\n";
    private static final Instant NOW = Instant.parse("2026-12-03T15:00:00Z");
    private static final LocalDate THURSDAY = LocalDate.of(2026, 12, 3);
    private static final List<StandingOrder> STANDING = List.of(
            new StandingOrder("HARB", "FIRM-12", DayOfWeek.FRIDAY, 24, LocalDate.of(2026, 1, 1), Optional.empty()));

    @TempDir
    Path folder;

    private final Shop shop = SmallShop.open();
    private Ledger ledger;
    private DropFolder drop;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        drop = new DropFolder(folder.resolve("drop"), Duration.ZERO);
        drop.look(NOW);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    @Test
    void a_dropped_file_becomes_the_book() throws IOException {
        drop("orders.csv", "B1,1,HARB,FIRM-12,12,2026-12-04,\nS-HARB-20261204,1,,,20,,amend\n");
        takeAll();

        assertThat(packs()).containsExactly("B1 12", "S-HARB-20261204 20");
    }

    @Test
    void the_same_file_twice_counts_once() throws IOException {
        String rows = "B1,1,HARB,FIRM-12,12,2026-12-04,\n";
        drop("first.csv", rows);
        takeAll();
        drop("change.csv", "B1,1,,,18,,amend\n");
        takeAll();
        drop("back.csv", "B1,1,,,15,,amend\n");
        takeAll();
        drop("change-again.csv", "B1,1,,,18,,amend\n");
        drop("first.csv", rows);
        takeAll();

        assertThat(packs()).containsExactly("B1 15", "S-HARB-20261204 24");
        assertThat(Files.list(folder.resolve("drop/taken"))).hasSize(5);
        assertThat(Files.list(folder.resolve("drop/refused"))).isEmpty();
    }

    @Test
    void a_crash_between_commit_and_acknowledging_counts_nothing_twice() throws IOException {
        drop("orders.csv", "B1,1,HARB,FIRM-12,12,2026-12-04,\nB1,1,,,18,,amend\n");
        for (Dropped dropped : drop.look(NOW)) commit(dropped);
        ledger.close();

        ledger = Ledger.open(folder.resolve("ledger.db"));
        drop = new DropFolder(folder.resolve("drop"), Duration.ZERO);
        takeAll();

        assertThat(packs()).containsExactly("B1 18", "S-HARB-20261204 24");
        assertThat(ledger.orders().amendments(THURSDAY)).hasSize(1);
        assertThat(folder.resolve("drop/taken/orders.csv")).exists();
    }

    @Test
    void a_crash_before_the_commit_loses_nothing() throws IOException {
        drop("orders.csv", "B1,1,HARB,FIRM-12,12,2026-12-04,\n");
        drop.look(NOW);

        drop = new DropFolder(folder.resolve("drop"), Duration.ZERO);
        takeAll();

        assertThat(packs()).containsExactly("B1 12", "S-HARB-20261204 24");
    }

    @Test
    void a_refused_file_may_come_again_unchanged_once_the_shop_knows_its_words() throws IOException {
        String rows = "B1,1,HARB,NEW-1,12,2026-12-04,\n";
        drop("orders.csv", rows);
        takeAll();
        assertThat(folder.resolve("drop/refused/orders.csv")).exists();

        assertThat(ledger.orders().isTaken(new HashOf(HEADER + rows).hex())).isFalse();
    }

    @Test
    void other_content_under_the_same_number_is_shown_and_changes_nothing() throws IOException {
        drop("a.csv", "B1,1,HARB,FIRM-12,12,2026-12-04,\n");
        takeAll();
        drop("b.csv", "B1,1,HARB,FIRM-12,30,2026-12-04,\n");
        takeAll();

        assertThat(packs()).containsExactly("B1 12", "S-HARB-20261204 24");
        assertThat(book().conflicts()).hasSize(1);
        assertThat(book().conflicts().get(0).other().packs()).isEqualTo(30);
    }

    @Test
    void a_second_close_returns_the_first_and_what_came_between_is_late() throws IOException {
        drop("a.csv", "B1,1,HARB,FIRM-12,12,2026-12-04,\n");
        takeAll();
        ClosedBook first = ledger.closes().close(book().close(THURSDAY, NOW));
        drop("b.csv", "B2,1,QUAY,FIRM-12,6,2026-12-04,\n");
        takeAll();

        ClosedBook forged = new ClosedBook(THURSDAY, NOW.plusSeconds(60), List.of());
        assertThat(ledger.closes().close(forged)).isEqualTo(first);
        assertThat(ledger.closes().find(THURSDAY)).contains(first);
        assertThat(first.packs()).isEqualTo(36);
        assertThat(book().afterClose(THURSDAY))
                .extracting(BookLine::order, BookLine::late)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(new OrderNumber("B2"), true));
    }

    @Test
    void an_order_of_the_command_line_gets_the_next_free_number() {
        assertThat(ledger.orders().freeNumber("C", THURSDAY)).isEqualTo(new OrderNumber("C-20261203-1"));
        ledger.orders().add(List.of(KeptNight.line("C-20261203-1", 4)));
        assertThat(ledger.orders().freeNumber("C", THURSDAY)).isEqualTo(new OrderNumber("C-20261203-2"));
    }

    private void takeAll() {
        for (Dropped dropped : drop.look(NOW)) dropped.acknowledge(commit(dropped));
    }

    private Reading commit(Dropped dropped) {
        return ledger.inTransaction(() -> {
            Reading reading = dropped.read(shop, book(), NOW);
            ledger.orders().add(reading.lines());
            ledger.orders().add(reading.conflicts().stream().map(c -> c.other()).toList());
            if (!reading.isRefused() && ledger.orders().takeFile(dropped.sha256(), dropped.name(), NOW))
                ledger.orders().amend(reading.amendments());
            return reading;
        });
    }

    private OrderBook book() {
        return ledger.book(shop, STANDING, THURSDAY);
    }

    private List<String> packs() {
        return book().bookFor(THURSDAY).stream()
                .map(line -> line.order() + " " + line.packs())
                .toList();
    }

    private void drop(String name, String rows) throws IOException {
        Files.writeString(folder.resolve("drop").resolve(name), HEADER + rows);
    }

    /** SHA-256 as the JDK has it, apart from our own code. */
    private record HashOf(String text) {
        String hex() {
            try {
                return java.util.HexFormat.of()
                        .formatHex(java.security.MessageDigest.getInstance("SHA-256")
                                .digest(text.getBytes(java.nio.charset.StandardCharsets.UTF_8)));
            } catch (java.security.NoSuchAlgorithmException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
