package dawnkettle.store;

import dawnkettle.book.OrderNumber;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.stock.LotCode;
import dawnkettle.trouble.DiskAway;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/** The one connection to the ledger: statements with the shop's values, and transactions that join the outer one. */
final class Sql {
    private final Connection connection;
    private final LedgerTrouble trouble;
    private final ReentrantLock turn = new ReentrantLock();
    private boolean inTransaction;
    private boolean doomed;
    private boolean full;
    private DiskAway gone;

    Sql(Connection connection, LedgerTrouble trouble) {
        this.connection = connection;
        this.trouble = trouble;
    }

    /** Notes what the disk refused; once it failed, nothing is asked of it again: a sync that failed is never retried. */
    private RuntimeException refused(SQLException e) {
        full |= LedgerTrouble.isFull(e);
        RuntimeException refused = trouble.whileOpen(e);
        if (refused instanceof DiskAway away && gone == null) gone = away;
        return refused;
    }

    private void refuseWhereGone() {
        if (gone != null) throw new DiskAway(gone.getMessage(), gone);
    }

    /** Why the disk is not asked any more; null while it is. */
    DiskAway gone() {
        return gone;
    }

    /** Whether the disk had no room since this was last asked. */
    boolean wasFull() {
        boolean was = full;
        full = false;
        return was;
    }

    /** All of {@code work} is written, or none of it. Within another transaction it becomes part of that one. */
    <T> T inTransaction(Supplier<T> work) {
        turn.lock();
        try {
            return inTransaction ? joined(work) : whole(work);
        } finally {
            turn.unlock();
        }
    }

    void inTransaction(Runnable work) {
        inTransaction(() -> {
            work.run();
            return true;
        });
    }

    private <T> T whole(Supplier<T> work) {
        script("BEGIN IMMEDIATE");
        inTransaction = true;
        doomed = false;
        boolean written = false;
        try {
            T answer = work.get();
            if (doomed) throw new IllegalStateException("part of this transaction failed, so none of it is written");
            script("COMMIT");
            written = true;
            return answer;
        } finally {
            inTransaction = false;
            if (!written) rollBack();
        }
    }

    private <T> T joined(Supplier<T> work) {
        boolean whole = false;
        try {
            T answer = work.get();
            whole = true;
            return answer;
        } finally {
            if (!whole) doomed = true;
        }
    }

    private void rollBack() {
        if (gone != null) return;
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate("ROLLBACK");
        } catch (SQLException rolledBackAlready) {
            // SQLite rolls back by itself on a full disk and the like; the first exception says what happened.
        }
    }

    /** Runs one or several statements without values. */
    void script(String statements) {
        refuseWhereGone();
        turn.lock();
        try (Statement statement = connection.createStatement()) {
            statement.executeUpdate(statements);
        } catch (SQLException e) {
            throw refused(e);
        } finally {
            turn.unlock();
        }
    }

    /** @return how many rows were written */
    int write(String sql, Object... values) {
        refuseWhereGone();
        turn.lock();
        try (PreparedStatement statement = prepared(sql, values)) {
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw refused(e);
        } finally {
            turn.unlock();
        }
    }

    <T> List<T> list(Row.Reader<T> reader, String sql, Object... values) {
        refuseWhereGone();
        turn.lock();
        try (PreparedStatement statement = prepared(sql, values);
                ResultSet results = statement.executeQuery()) {
            List<T> all = new ArrayList<>();
            Row row = new Row(results);
            while (results.next()) all.add(reader.read(row));
            return all;
        } catch (SQLException e) {
            throw refused(e);
        } finally {
            turn.unlock();
        }
    }

    <T> Optional<T> first(Row.Reader<T> reader, String sql, Object... values) {
        return list(reader, sql, values).stream().findFirst();
    }

    /** The one number that {@code sql} selects as {@code n}. */
    long number(String sql, Object... values) {
        return first(row -> row.number("n"), sql, values).orElseThrow();
    }

    private PreparedStatement prepared(String sql, Object... values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.length; i++) statement.setObject(i + 1, plain(values[i]));
        return statement;
    }

    private static Object plain(Object value) {
        if (value instanceof Optional<?> optional)
            return optional.map(Sql::plain).orElse(null);
        if (value instanceof Instant instant) return instant.toEpochMilli();
        if (value instanceof Boolean flag) return flag ? 1 : 0;
        if (value instanceof Mass mass) return mass.milligrams();
        if (value instanceof Celsius celsius) return celsius.tenths();
        if (value instanceof Enum<?> word) return word(word);
        if (value instanceof LocalDate || value instanceof LotCode || value instanceof OrderNumber)
            return value.toString();
        return value;
    }

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
