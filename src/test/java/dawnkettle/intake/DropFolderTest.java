package dawnkettle.intake;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.book.Amendment;
import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.SmallShop;
import dawnkettle.book.StandingOrder;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DropFolderTest {
    private static final String HEADER = "order,line,customer,product,packs,delivery_date,action\n";
    private static final Instant NOW = Instant.parse("2026-12-03T15:00:00Z");
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);

    @TempDir
    Path folder;

    private final Shop shop = SmallShop.open();
    private OrderBook book;
    private DropFolder drop;

    @BeforeEach
    void open() {
        book = book(line("A1", 12));
        drop = new DropFolder(folder, Duration.ZERO);
    }

    @Test
    void new_orders_and_amendments_are_taken_and_what_is_unknown_is_refused_by_name() throws IOException {
        drop("orders.csv", HEADER + """
                B1,1,HARB,FIRM-12,24,2026-12-04,
                B1,2,HARB,FRIED-8,6,2026-12-05,new
                B2,1,MILL,FIRM-12,12,2026-12-04,
                B3,1,QUAY,SOFT-6,8,2026-12-04,
                A1,1,HARB,FIRM-12,18,2026-12-04,amend
                B4,1,HARB,FRIM-12,4,2026-12-04,
                B5,1,NOBODY,FIRM-12,4,2026-12-04,
                """);

        Dropped dropped = drop.look(NOW).get(0);
        Reading reading = dropped.read(shop, book, NOW);
        Path end = dropped.acknowledge(reading);

        assertThat(reading.lines())
                .extracting(line -> line.order() + "/" + line.line() + " " + line.packs() + " " + line.origin())
                .containsExactly(
                        "B1/1 24 orders.csv:2:1",
                        "B1/2 6 orders.csv:3:1",
                        "B2/1 12 orders.csv:4:1",
                        "B3/1 8 orders.csv:5:1");
        assertThat(reading.amendments())
                .containsExactly(new Amendment(
                        new OrderNumber("A1"), 1, 18, OrderLine.Source.FILE, "orders.csv:6:1", NOW, false));
        assertThat(folder.relativize(end)).hasToString("taken/orders.csv");
        assertThat(folder.resolve("taken/orders.csv.refusals.txt")).hasContent("""
                These orders were not taken, the others of the file were:
                orders.csv:7:11: unknown product "FRIM-12"; did you mean "FIRM-12"?
                orders.csv:8:6: unknown customer "NOBODY"; write a code of customers.csv
                """);
        assertThat(names())
                .containsExactly("reading", "refused", "taken", "taken/orders.csv", "taken/orders.csv.refusals.txt");
    }

    @Test
    void what_was_left_out_is_named_as_long_as_it_is_new_and_lies_there() throws IOException {
        assertThat(drop.leftOutSince(Instant.EPOCH)).isEmpty();
        Instant before = Instant.now().minusSeconds(60);
        drop("some.csv", HEADER + "B1,1,HARB,FIRM-12,24,2026-12-04,\nB2,1,HARB,GONE,24,2026-12-04,\n");
        drop("none.csv", HEADER + "B3,1,HARB,GONE,24,2026-12-04,\n");
        drop("all.csv", HEADER + "B4,1,HARB,FIRM-12,24,2026-12-04,\n");
        for (Dropped dropped : drop.look(NOW)) dropped.acknowledge(dropped.read(shop, book, NOW));

        assertThat(drop.leftOutSince(before))
                .containsExactly(
                        new DropFolder.LeftOut("refused", "none.csv", "none.csv.reasons.txt"),
                        new DropFolder.LeftOut("taken", "some.csv", "some.csv.refusals.txt"));
        assertThat(drop.leftOutSince(Instant.now().plusSeconds(60))).isEmpty();
        Files.delete(folder.resolve("refused/none.csv.reasons.txt"));
        assertThat(drop.leftOutSince(before))
                .extracting(DropFolder.LeftOut::isWhole)
                .containsExactly(false);
    }

    @Test
    void an_order_with_a_problem_in_one_line_is_left_out_whole() throws IOException {
        Reading reading = read(HEADER + """
                B1,1,HARB,FIRM-12,24,2026-12-04,
                B2,1,MILL,FIRM-12,12,2026-12-04,
                B1,2,HARB,FIRM-12,none,2026-12-04,
                """);

        assertThat(reading.lines()).extracting(OrderLine::order).containsExactly(new OrderNumber("B2"));
        assertThat(reading.problems())
                .hasToString("[orders.csv:4:19: packs \"none\" is not a whole number from 1 to 5000; "
                        + "write the packs as a number, as 24]");
    }

    @Test
    void a_file_of_which_nothing_counts_is_refused_with_its_reasons() throws IOException {
        drop("orders.csv", HEADER + "B1,1,HARB,GONE,24,2026-12-04,\n");

        Dropped dropped = drop.look(NOW).get(0);
        dropped.acknowledge(dropped.read(shop, book, NOW));

        assertThat(folder.resolve("refused/orders.csv")).exists();
        assertThat(folder.resolve("refused/orders.csv.reasons.txt")).hasContent("""
                Nothing of this file was taken:
                orders.csv:2:11: unknown product "GONE"; write a code of products.csv
                """);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        B1,0,HARB,FIRM-12,1,2026-12-04,      | orders.csv:2:4: line "0" is not a whole number from 1 to 999; number the order's lines from 1
        B 1,1,HARB,FIRM-12,1,2026-12-04,     | orders.csv:2:1: order number "B 1" cannot be read; write 1 to 40 of letters, digits, - _ . / :
        B1,1,HARB,FIRM-12,0,2026-12-04,      | orders.csv:2:19: packs "0" is not a whole number from 1 to 5000; to cancel a line, amend it with packs 0
        B1,1,HARB,FIRM-12,5001,2026-12-04,   | orders.csv:2:19: packs "5001" is not a whole number from 1 to 5000; write the packs as a number, as 24
        B1,1,HARB,FIRM-12,-4,2026-12-04,     | orders.csv:2:19: packs "-4" is not a whole number from 1 to 5000; write the packs as a number, as 24
        B1,1,HARB,FIRM-12,4,2026-13-04,      | orders.csv:2:21: delivery date "2026-13-04" is not a day; write year-month-day, as 2026-12-04
        B1,1,HARB,FIRM-12,4,2026-12-02,      | orders.csv:2:21: delivery date "2026-12-02" is past; write a day from 2026-12-03 on
        B1,1,HARB,FIRM-12,4,2026-12-06,      | orders.csv:2:21: Sunday 2026-12-06 is not a delivery day of route "early"; the next day it can be had is 2026-12-04
        B1,1,HARB,FIRM-12,4,2026-12-04,drop  | orders.csv:2:32: action "drop" is not known; write new or amend, or leave it empty
        A1,1,HARB,FIRM-12,13,2026-12-04,     | orders.csv:2:4: order "A1" line 1 was taken before with other content (12 of "FIRM-12" for 2026-12-04); to change it write amend as its action; a new order needs another number
        A1,2,HARB,FIRM-12,13,2026-12-04,amend| orders.csv:2:4: order "A1" has no line 2 to amend; write the numbers as they were ordered
        A1,1,MILL,FIRM-12,13,2026-12-04,amend| orders.csv:2:6: the line was ordered with "HARB", not "MILL"; an amendment changes packs alone: cancel the line with packs 0 and order anew
        S-1,1,HARB,FIRM-12,3,2026-12-04,     | orders.csv:2:1: order number "S-1" is kept for standing orders; give it another number, or write amend as its action
        """)
    void each_thing_that_can_be_wrong_with_a_line_is_said_with_its_place(String line, String said) throws IOException {
        Reading reading = read(HEADER + line + "\n");

        assertThat(reading.problems()).extracting(Object::toString).containsExactly(said);
        assertThat(reading.isRefused()).isTrue();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        order,line,customer,product,packs\\n          | orders.csv:1:1: column "delivery_date" is missing; begin the file with order,line,customer,product,packs,delivery_date,action
        HEADER,colour\\nB1,1,HARB,FIRM-12,4,2026-12-04,,red\\n | orders.csv:1:56: unknown column "colour"; the columns are order,line,customer,product,packs,delivery_date,action, with commas between
        HEADER\\nB1,1,HARB,FIRM-12,4,2026-12-04,\\nB2,1,HA\\n | orders.csv:3:1: the last line does not have all its cells, so the file may be half written; drop the whole file again
        HEADER\\nB1,1,HARB,FIRM-12,4,2026-12-04,       | orders.csv: the last line has no end, so the file may be half written; end it with a line break
        HEADER\\nB1,1,"HARB,FIRM-12,4,2026-12-04,\\n   | orders.csv:2:6: a quoted cell is never closed; end it with a "
        HEADER\\n,1,HARB,FIRM-12,4,2026-12-04,\\n      | orders.csv:2:1: the order number is missing, and the line may belong to any order; write the order's number in each of its lines
        """)
    void a_file_that_cannot_be_read_as_a_whole_is_refused_whole(String text, String said) throws IOException {
        Reading reading = read(text.replace("\\n", "\n").replace("HEADER", HEADER.strip()));

        assertThat(reading.lines()).isEmpty();
        assertThat(reading.problems()).extracting(Object::toString).containsExactly(said);
    }

    @Test
    void ten_megabytes_of_garbage_and_text_of_another_encoding_are_refused_and_nothing_applied() throws IOException {
        byte[] garbage = new byte[10_000_000];
        new Random(7).nextBytes(garbage);
        Files.write(folder.resolve("a.csv"), garbage);
        Files.write(folder.resolve("b.csv"), Arrays.copyOf(garbage, 10_000));
        Files.write(folder.resolve("c.csv"), new byte[0]);

        for (Dropped dropped : drop.look(NOW)) dropped.acknowledge(dropped.read(shop, book, NOW));

        assertThat(folder.resolve("refused/a.csv.reasons.txt")).content().contains("larger than 1 MB");
        assertThat(folder.resolve("refused/b.csv.reasons.txt")).content().contains("not UTF-8 text");
        assertThat(folder.resolve("refused/c.csv.reasons.txt")).content().contains("the file is empty");
        assertThat(folder.resolve("refused/a.csv")).hasSize(10_000_000);
    }

    @Test
    void what_is_in_the_book_already_with_the_same_content_is_no_problem_and_no_line() throws IOException {
        Reading reading = read(HEADER + "A1,1,HARB,FIRM-12,12,2026-12-04,\n");

        assertThat(reading).isEqualTo(new Reading(List.of(), List.of(), List.of(), List.of(), 1));
        assertThat(reading.isRefused()).isFalse();
    }

    @Test
    void other_content_under_a_known_number_is_handed_over_as_a_conflict() throws IOException {
        Reading reading = read(HEADER + "A1,1,HARB,FIRM-12,13,2026-12-04,\n");

        assertThat(reading.conflicts()).hasSize(1);
        assertThat(reading.conflicts().get(0).first().packs()).isEqualTo(12);
        assertThat(reading.conflicts().get(0).other().packs()).isEqualTo(13);
    }

    @Test
    void a_standing_order_that_is_amended_is_written_out_as_a_line_first() throws IOException {
        book = new OrderBook(
                shop,
                List.of(),
                List.of(),
                List.of(new StandingOrder(
                        "HARB", "FIRM-12", DayOfWeek.FRIDAY, 24, LocalDate.of(2026, 1, 1), Optional.empty())),
                List.of());

        Reading reading = read(HEADER + "S-HARB-20261204,1,,,0,,amend\n");

        assertThat(reading.problems()).isEmpty();
        assertThat(reading.lines())
                .containsExactly(new OrderLine(
                        new OrderNumber("S-HARB-20261204"),
                        1,
                        "HARB",
                        "FIRM-12",
                        24,
                        FRIDAY,
                        OrderLine.Source.STANDING,
                        "orders.csv:2:1",
                        NOW));
        assertThat(reading.amendments()).extracting(Amendment::packs).containsExactly(0);
    }

    @Test
    void an_amendment_of_a_closed_day_is_marked_late() throws IOException {
        OrderLine line = line("A1", 12);
        var closed = book(line).close(LocalDate.of(2026, 12, 3), NOW.minusSeconds(60));
        book = new OrderBook(shop, List.of(line), List.of(), List.of(), List.of(closed));

        assertThat(read(HEADER + "A1,1,,,6,,amend\n").amendments())
                .extracting(Amendment::late)
                .containsExactly(true);
    }

    @Test
    void a_file_is_read_only_when_it_has_been_left_alone() throws IOException {
        drop = new DropFolder(folder, Duration.ofSeconds(10));
        Path file = drop("orders.csv", HEADER);
        Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(4)));
        assertThat(drop.look(NOW)).isEmpty();

        Files.setLastModifiedTime(file, FileTime.from(NOW.minusSeconds(10)));
        assertThat(drop.look(NOW)).hasSize(1);
    }

    @Test
    void a_file_with_a_time_ahead_of_the_clock_is_watched_until_it_no_longer_grows() throws IOException {
        drop = new DropFolder(folder, Duration.ofSeconds(10));
        FileTime ahead = FileTime.from(NOW.plusSeconds(86_400));
        Path file = drop("orders.csv", "order,");
        Files.setLastModifiedTime(file, ahead);
        assertThat(drop.look(NOW)).isEmpty();
        Files.writeString(file, HEADER);
        Files.setLastModifiedTime(file, ahead);
        assertThat(drop.look(NOW.plusSeconds(11))).isEmpty();
        assertThat(drop.look(NOW.plusSeconds(22))).hasSize(1);
    }

    @Test
    void dot_files_parts_other_names_and_folders_are_left_alone() throws IOException {
        drop(".hidden.csv", HEADER);
        drop("orders.csv.part", HEADER);
        drop("notes.txt", "hello");
        Files.createDirectory(folder.resolve("folder.csv"));

        assertThat(drop.look(NOW)).isEmpty();
        assertThat(folder.resolve("notes.txt")).exists();
    }

    @Test
    void a_link_is_refused_and_what_it_points_to_is_not_read(@TempDir Path elsewhere) throws IOException {
        Path secret = Files.writeString(elsewhere.resolve("secret"), HEADER + "B1,1,HARB,FIRM-12,4,2026-12-04,\n");
        Files.createSymbolicLink(folder.resolve("orders.csv"), secret);

        Dropped dropped = drop.look(NOW).get(0);
        dropped.acknowledge(dropped.read(shop, book, NOW));

        assertThat(secret).exists();
        assertThat(folder.resolve("refused/orders.csv.reasons.txt"))
                .content()
                .contains("orders.csv: this is a link or a device, not a file; drop the file itself");
    }

    @Test
    void no_file_is_moved_over_another() throws IOException {
        for (int i = 0; i < 3; i++) {
            drop("orders.csv", HEADER + "B" + i + ",1,HARB,FIRM-12,4,2026-12-04,\n");
            Dropped dropped = drop.look(NOW).get(0);
            dropped.acknowledge(dropped.read(shop, book, NOW));
        }

        assertThat(names())
                .contains("taken/orders.csv", "taken/orders-2.csv", "taken/orders-3.csv")
                .hasSize(6);
    }

    @Test
    void a_file_that_was_not_acknowledged_is_found_again_with_the_same_hash() throws IOException {
        drop("orders.csv", HEADER + "B1,1,HARB,FIRM-12,4,2026-12-04,\n");
        String before = drop.look(NOW).get(0).sha256();

        List<Dropped> again = new DropFolder(folder, Duration.ofSeconds(10)).look(NOW);

        assertThat(again).extracting(Dropped::sha256).containsExactly(before);
        assertThat(before).hasSize(64);
    }

    @Test
    void a_writer_that_comes_while_we_read_does_not_change_what_is_moved_on() throws IOException {
        String first = HEADER + "B1,1,HARB,FIRM-12,4,2026-12-04,\n";
        drop("orders.csv", first);
        Dropped dropped = drop.look(NOW).get(0);
        drop("orders.csv", HEADER + "B2,1,HARB,FIRM-12,4,2026-12-04,\n");

        dropped.acknowledge(dropped.read(shop, book, NOW));

        assertThat(folder.resolve("taken/orders.csv")).hasContent(first);
        assertThat(drop.look(NOW)).hasSize(1);
    }

    @Test
    void a_folder_that_cannot_be_made_is_told_with_its_remedy() throws IOException {
        Path notAFolder = Files.writeString(folder.resolve("plain"), "");

        assertThatThrownBy(() -> new DropFolder(notAFolder, Duration.ZERO).look(NOW))
                .isInstanceOf(DeviceAway.class)
                .hasMessageContaining("drop folder " + notAFolder + ": cannot be read or written")
                .hasMessageEndingWith("give the service write access to it, files wait where they are");
    }

    private Reading read(String text) throws IOException {
        drop("orders.csv", text);
        return drop.look(NOW).get(0).read(shop, book, NOW);
    }

    private Path drop(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text, UTF_8);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(path -> !path.equals(folder))
                    .map(path -> folder.relativize(path).toString())
                    .sorted()
                    .toList();
        }
    }

    private OrderBook book(OrderLine... lines) {
        return new OrderBook(shop, List.of(lines), List.of(), List.of(), List.of());
    }

    private static OrderLine line(String order, int packs) {
        return new OrderLine(
                new OrderNumber(order),
                1,
                "HARB",
                "FIRM-12",
                packs,
                FRIDAY,
                OrderLine.Source.FILE,
                "before.csv:2:1",
                NOW.minusSeconds(3600));
    }
}
