package dawnkettle.store;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A ledger of an earlier shape is brought to this one with all that it held. */
class MigrationsTest {
    private static final LotCode LOT = new LotCode("261203-FI01");

    @TempDir
    Path folder;

    @Test
    void records_of_the_fourth_shape_are_kept_and_stay_unchangeable() throws SQLException, IOException {
        run(
                script("001-orders.sql"),
                script("002-night.sql"),
                script("003-plans.sql"),
                script("004-records.sql"),
                "INSERT INTO record (kind, happened_at, recorded_at, origin, lot, product, packs)"
                        + " VALUES ('sold', 1000, 2000, 'mail 1', '261203-FI01', 'FIRM-12', 3)",
                "PRAGMA application_id = " + 0x44776e6b,
                "PRAGMA user_version = 4");

        Recorded packed = new Recorded(
                new Fact.Packed(LOT, "FIRM-12", 30), Instant.ofEpochMilli(500), Instant.ofEpochMilli(500), "mail 2");
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            ledger.records().add(packed);
            assertThat(ledger.records().all(Fact.Kind.SOLD, Fact.Kind.PACKED))
                    .containsExactly(
                            packed,
                            new Recorded(
                                    new Fact.Sold(LOT, "FIRM-12", 3),
                                    Instant.ofEpochMilli(1000),
                                    Instant.ofEpochMilli(2000),
                                    "mail 1"));
        }
        for (String change : List.of("UPDATE record SET packs = 4", "DELETE FROM record"))
            assertThatThrownBy(() -> run(change)).hasMessageContaining("a record is only ever added");
    }

    /** A ledger as the first five steps left it, with one record of each of its kinds; and one of eight steps with a record taken back. */
    @Test
    void a_ledger_of_five_or_eight_steps_is_brought_to_this_one_with_all_its_records()
            throws SQLException, IOException {
        run(
                script("001-orders.sql"),
                script("002-night.sql"),
                script("003-plans.sql"),
                script("004-records.sql"),
                script("005-more-records.sql"));
        String[] kinds = {
            "('received', 1, 1, 'r1', 'YEL-1', NULL, 'BEAN-YEL', NULL, NULL, 600000000, 'kilogram', 64800, 'USD', NULL, NULL)",
            "('counted-material', 2, 2, 'r2', 'YEL-1', NULL, 'BEAN-YEL', NULL, NULL, 5000000, 'kilogram', NULL, NULL, NULL, NULL)",
            "('sold', 3, 3, 'r3', '261203-FI01', 'FIRM-400', NULL, NULL, 3, NULL, NULL, NULL, NULL, NULL, NULL)",
            "('lost-batch', 4, 4, 'r4', '261203-FI02', NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 'burnt')",
            "('returned', 5, 5, 'r5', NULL, 'FIRM-400', NULL, 'C002', 2, NULL, NULL, NULL, NULL, 'goods', 'blown')",
            "('priced', 6, 6, 'r6', NULL, 'FIRM-400', NULL, NULL, NULL, NULL, NULL, 310, 'USD', 'everyday', NULL)",
            "('packed', 7, 7, 'r7', '261203-FI01', 'FIRM-400', NULL, NULL, 30, NULL, NULL, NULL, NULL, NULL, NULL)"
        };
        for (String row : kinds)
            run("INSERT INTO record (kind, happened_at, recorded_at, origin, lot, product, material, customer, packs,"
                    + " amount, unit, minor, currency, place, note) VALUES " + row);
        run("INSERT INTO record (kind, happened_at, recorded_at, origin, product, day, packs)"
                + " VALUES ('came-late', 8, 8, 'r8', 'FIRM-400', '2026-12-03', 6)");
        run("INSERT INTO record (kind, happened_at, recorded_at, origin, day, place, lot, beans_mg)"
                + " VALUES ('soaked', 9, 9, 'r9', '2026-12-03', 'T01', 'YEL-1', 85000000)");
        run("PRAGMA application_id = " + 0x44776e6b, "PRAGMA user_version = 5");
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            assertThat(ledger.records().find(1).orElseThrow().fact()).isInstanceOf(Fact.Received.class);
            assertThat(ledger.records()
                            .all(
                                    Fact.Kind.RECEIVED,
                                    Fact.Kind.COUNTED,
                                    Fact.Kind.SOLD,
                                    Fact.Kind.LOST,
                                    Fact.Kind.RETURNED,
                                    Fact.Kind.PACKED,
                                    Fact.Kind.CAME_LATE,
                                    Fact.Kind.SOAKED))
                    .extracting(Recorded::origin)
                    .containsExactly("r1", "r2", "r3", "r4", "r5", "r7", "r8", "r9");
            Instant now = Instant.ofEpochMilli(20);
            ledger.records().add(new Recorded(new Fact.Held(LOT, "odd"), now, now, "n1"));
            ledger.records().add(new Recorded(new Fact.HeldBought("BEAN-YEL", "YEL-1", "mould"), now, now, "n2"));
            ledger.records().add(new Recorded(new Fact.Cancelled(3, "a slip"), now, now, "n3"));
            assertThat(ledger.records().all(Fact.Kind.SOLD)).isEmpty();
            assertThat(ledger.records().lastNumber()).isEqualTo(12);
        }
        try (Ledger again = Ledger.open(folder.resolve("ledger.db"))) {
            assertThat(again.records().isCancelled(3)).isTrue();
            assertThat(again.broken(java.time.LocalDate.of(2026, 12, 3))).isEmpty();
        }
    }

    @Test
    void a_record_that_was_taken_back_before_the_ninth_step_stays_taken_back() throws SQLException, IOException {
        for (String step : List.of(
                "001-orders.sql",
                "002-night.sql",
                "003-plans.sql",
                "004-records.sql",
                "005-more-records.sql",
                "006-alarms.sql",
                "007-keeping.sql",
                "008-labels.sql")) run(script(step));
        run(
                "INSERT INTO record (kind, happened_at, recorded_at, origin, lot, product, packs)"
                        + " VALUES ('sold', 1, 1, 'a', '261203-FI01', 'FIRM-400', 3)",
                "INSERT INTO record (kind, happened_at, recorded_at, origin, cancels, note)"
                        + " VALUES ('cancelled', 2, 2, 'b', 1, 'a slip')",
                "PRAGMA application_id = " + 0x44776e6b,
                "PRAGMA user_version = 8");
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            assertThat(ledger.records().all(Fact.Kind.SOLD)).isEmpty();
            assertThat(ledger.records().isCancelled(1)).isTrue();
        }
    }

    private static String script(String name) throws IOException {
        try (InputStream in = Ledger.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), UTF_8);
        }
    }

    private void run(String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("ledger.db"));
                Statement statement = connection.createStatement()) {
            for (String each : statements) statement.executeUpdate(each);
        }
    }
}
