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
