package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.trouble.DeviceAway;
import dawnkettle.trouble.DiskAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LedgerTest {
    private static final Instant NOON = Instant.parse("2026-12-03T17:00:00Z");
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);

    @TempDir
    Path folder;

    @Test
    void it_writes_ahead_syncs_fully_and_minds_references() throws SQLException {
        try (Ledger ledger = open()) {
            assertThat(ledger.sql.first(row -> row.text("journal_mode"), "PRAGMA journal_mode"))
                    .contains("wal");
            assertThat(ledger.sql.number("SELECT synchronous AS n FROM pragma_synchronous"))
                    .as("FULL is 2 (sqlite.org/pragma.html)")
                    .isEqualTo(2);
            assertThat(ledger.sql.number("SELECT foreign_keys AS n FROM pragma_foreign_keys"))
                    .isEqualTo(1);
            assertThat(ledger.sql.number("SELECT timeout AS n FROM pragma_busy_timeout"))
                    .isEqualTo(10_000);
        }
        assertThat(sql("PRAGMA user_version")).isEqualTo("13");
    }

    @Test
    void every_table_is_strict() throws SQLException {
        open().close();

        assertThat(sql("SELECT group_concat(name) FROM pragma_table_list "
                        + "WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' AND strict = 0"))
                .isNull();
    }

    @Test
    void opening_it_again_keeps_what_was_written() {
        try (Ledger ledger = open()) {
            ledger.orders().add(List.of(line("A1", 12)));
        }
        try (Ledger ledger = open()) {
            assertThat(ledger.orders().lines(FRIDAY)).containsExactly(line("A1", 12));
        }
    }

    @Test
    void a_transaction_is_written_whole_or_not_at_all() {
        try (Ledger ledger = open()) {
            assertThatThrownBy(() -> ledger.inTransaction(() -> {
                        ledger.orders().add(List.of(line("A1", 12)));
                        throw new IllegalStateException("the power went");
                    }))
                    .hasMessage("the power went");
            assertThat(ledger.orders().lines(FRIDAY)).isEmpty();

            ledger.inTransaction(() -> ledger.orders().add(List.of(line("A2", 6))));
            assertThat(ledger.orders().lines(FRIDAY)).containsExactly(line("A2", 6));
        }
    }

    @Test
    void a_transaction_of_which_a_part_failed_is_not_written_though_the_failure_was_caught() {
        try (Ledger ledger = open()) {
            assertThatThrownBy(() -> ledger.inTransaction(() -> {
                        ledger.orders().add(List.of(line("A1", 12)));
                        try {
                            ledger.inTransaction(() -> {
                                throw new IllegalArgumentException("half way");
                            });
                        } catch (IllegalArgumentException swallowed) {
                            ledger.orders().add(List.of(line("A2", 12)));
                        }
                    }))
                    .hasMessage("part of this transaction failed, so none of it is written");
            assertThat(ledger.orders().lines(FRIDAY)).isEmpty();
        }
    }

    @Test
    void nothing_that_is_only_added_can_be_changed_or_removed() throws SQLException {
        try (Ledger ledger = open()) {
            KeptNight.fill(ledger);
        }
        List<String> changeable = new ArrayList<>();
        for (String table : tables()) {
            if (table.startsWith("unconfirmed_") || table.equals("service_start"))
                continue; // no decision; the last few
            if (sql("SELECT count(*) FROM " + table).equals("0")) changeable.add(table + " is not filled by this test");
            if (!List.of("step", "effect", "outbox", "alarm").contains(table)
                    && works("UPDATE " + table + " SET rowid = rowid")) changeable.add(table + " can be changed");
            if (works("DELETE FROM " + table)) changeable.add(table + " can be emptied");
        }
        assertThat(changeable).isEmpty();
    }

    @Test
    void a_second_program_can_write_beside_the_first() {
        try (Ledger service = open();
                Ledger command = open()) {
            service.orders().add(List.of(line("A1", 12)));
            command.orders().add(List.of(line("A2", 6)));

            assertThat(service.orders().lines(FRIDAY)).hasSize(2);
        }
    }

    @Test
    void two_programs_that_write_at_once_wait_for_each_other() throws InterruptedException {
        open().close();
        List<Thread> programs = new ArrayList<>();
        for (String name : List.of("S", "C"))
            programs.add(new Thread(() -> {
                try (Ledger ledger = open()) {
                    for (int i = 0; i < 50; i++) {
                        String order = name + i;
                        ledger.inTransaction(() -> {
                            int before = ledger.orders().lines(FRIDAY).size();
                            ledger.orders().add(List.of(line(order, before + 1)));
                        });
                    }
                }
            }));
        programs.forEach(Thread::start);
        for (Thread program : programs) program.join();

        try (Ledger ledger = open()) {
            assertThat(ledger.orders().lines(FRIDAY))
                    .extracting(OrderLine::packs)
                    .as("each saw all that was written before it")
                    .isEqualTo(IntStream.rangeClosed(1, 100).boxed().toList());
        }
    }

    @Test
    void a_copy_opens_and_holds_as_much() {
        Path copy = folder.resolve("copy.db");
        try (Ledger ledger = open()) {
            KeptNight.fill(ledger);
            ledger.copyTo(copy);
            ledger.checkpoint();

            try (Ledger second = Ledger.open(copy)) {
                assertThat(second.orders().lines(LocalDate.EPOCH))
                        .isEqualTo(ledger.orders().lines(LocalDate.EPOCH));
            }
        }
    }

    @Test
    void what_is_no_ledger_is_refused_in_words() throws IOException, SQLException {
        Path garbage = Files.writeString(folder.resolve("ledger.db"), "x".repeat(5_000));
        assertThatThrownBy(this::open)
                .isInstanceOf(DiskAway.class)
                .hasMessage("ledger " + garbage
                        + ": it is damaged; stop the service and put back a checked copy: dawnkettle restore");

        Files.delete(garbage);
        sql("CREATE TABLE other (a)");
        assertThatThrownBy(this::open)
                .hasMessageEndingWith("it is some other program's file; name another file for the ledger");

        Files.delete(garbage);
        open().close();
        sql("PRAGMA user_version = 99");
        assertThatThrownBy(this::open)
                .hasMessageEndingWith(
                        "it was written by a newer version (99, this one knows 13); install that version again");

        assertThatThrownBy(() -> Ledger.open(folder.resolve("nowhere/ledger.db")))
                .isInstanceOf(DeviceAway.class)
                .hasMessageEndingWith(
                        "it cannot be opened; see that its folder is there and the service may write in it");
    }

    private Ledger open() {
        return Ledger.open(folder.resolve("ledger.db"));
    }

    private List<String> tables() throws SQLException {
        return List.of(sql("SELECT group_concat(name, ' ') FROM sqlite_schema "
                        + "WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
                .split(" "));
    }

    private boolean works(String statement) throws SQLException {
        String change =
                statement.startsWith("UPDATE") ? statement.replace("rowid = rowid", firstColumn(statement)) : statement;
        try {
            sql(change);
            return true;
        } catch (SQLException refused) {
            assertThat(refused.getMessage()).matches("(?s).*(only ever added|stays as it|is kept|FOREIGN KEY).*");
            return false;
        }
    }

    private String firstColumn(String statement) throws SQLException {
        String table = statement.split(" ")[1];
        String column = sql("SELECT name FROM pragma_table_info('" + table + "') WHERE cid = 1");
        return column + " = " + column;
    }

    /** Asks the file itself, past our own code; references are not minded, so that only triggers can refuse. */
    private String sql(String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("ledger.db"));
                Statement asked = connection.createStatement()) {
            if (!asked.execute(statement)) return "";
            try (ResultSet results = asked.getResultSet()) {
                return results.next() ? results.getString(1) : "";
            }
        }
    }

    private static OrderLine line(String order, int packs) {
        return new OrderLine(
                new OrderNumber(order), 1, "HARB", "FIRM-12", packs, FRIDAY, OrderLine.Source.FILE, "f.csv:2:1", NOON);
    }
}
