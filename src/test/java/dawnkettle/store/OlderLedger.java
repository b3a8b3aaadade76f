package dawnkettle.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** A ledger as an older version made it, by that version's own steps, with the rows of one of today's that it had room for. */
public final class OlderLedger {
    private OlderLedger() {}

    /** @param version how many steps it has taken */
    public static void write(Path today, Path older, int version) throws SQLException, IOException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + older);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
            for (String step : Migrations.STEPS.subList(0, version)) statement.executeUpdate(text(step));
            statement.execute("PRAGMA application_id = " + Migrations.APPLICATION_ID);
            statement.execute("PRAGMA user_version = " + version);
            statement.execute("ATTACH DATABASE '" + today + "' AS today");
            for (String table : names(statement, "SELECT name FROM main.sqlite_schema WHERE type = 'table'"))
                copy(statement, table);
            statement.execute("DETACH DATABASE today");
        }
    }

    /** What triggers would write by themselves is copied as well, so they are out of the way for it. */
    private static void copy(Statement statement, String table) throws SQLException {
        List<String> columns = names(statement, "SELECT name FROM pragma_table_info('" + table + "', 'main')");
        List<String> known = names(statement, "SELECT name FROM pragma_table_info('" + table + "', 'today')");
        columns.retainAll(known);
        List<String> triggers = names(
                statement, "SELECT sql FROM main.sqlite_schema WHERE type = 'trigger' AND tbl_name = '" + table + "'");
        for (String name : names(
                statement, "SELECT name FROM main.sqlite_schema WHERE type = 'trigger' AND tbl_name = '" + table + "'"))
            statement.execute("DROP TRIGGER main." + name);
        String all = String.join(", ", columns);
        statement.execute("INSERT INTO main." + table + " (" + all + ") SELECT " + all + " FROM today." + table);
        for (String trigger : triggers) statement.execute(trigger);
    }

    private static List<String> names(Statement statement, String query) throws SQLException {
        List<String> names = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery(query)) {
            while (rows.next()) names.add(rows.getString(1));
        }
        return names;
    }

    private static String text(String step) throws IOException {
        try (InputStream in = Migrations.class.getResourceAsStream(step)) {
            return new String(in.readAllBytes(), UTF_8);
        }
    }

    /** Which version a file says that it is of. */
    public static int version(Path file) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA user_version")) {
            return rows.getInt(1);
        }
    }

    /** As if a version that is to come had written it. */
    public static void stamp(Path file, int version) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA user_version = " + version);
        }
    }
}
