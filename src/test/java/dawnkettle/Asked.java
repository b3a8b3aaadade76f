package dawnkettle;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The ledger's file as somebody else sees it: by a connection of one's own, so that only what is committed counts. */
final class Asked implements AutoCloseable {
    private final Connection connection;
    private final Map<String, PreparedStatement> kept = new HashMap<>();

    Asked(Path file) {
        try {
            connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Few are asked often. */
    private PreparedStatement prepared(String query) throws SQLException {
        PreparedStatement statement = kept.get(query);
        if (statement == null) {
            if (kept.size() > 200) {
                for (PreparedStatement old : kept.values()) old.close();
                kept.clear();
            }
            statement = connection.prepareStatement(query);
            kept.put(query, statement);
        }
        return statement;
    }

    /** Rows, the columns of each parted by a space. */
    List<String> rows(String query) {
        try (ResultSet results = prepared(query).executeQuery()) {
            int columns = results.getMetaData().getColumnCount();
            List<String> rows = new ArrayList<>();
            while (results.next()) {
                StringBuilder row = new StringBuilder();
                for (int i = 1; i <= columns; i++) row.append(i == 1 ? "" : " ").append(results.getString(i));
                rows.add(row.toString());
            }
            return rows;
        } catch (SQLException e) {
            throw new IllegalStateException(query, e);
        }
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
