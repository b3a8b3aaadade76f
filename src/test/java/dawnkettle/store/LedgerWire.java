package dawnkettle.store;

import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;

/** Sits between a ledger and its file: sees each statement, may change it, let it fail, or cut the power around it. */
public final class LedgerWire {
    private LedgerWire() {}

    /** What is done with each statement. */
    public interface Tap {
        /** The statement that runs instead; null where it only seems to run. */
        default String instead(String sql) {
            return sql;
        }

        void before(String sql) throws SQLException;

        void after(String sql) throws SQLException;
    }

    /** From now on all that the ledger says to its file goes through {@code tap}. */
    public static void tap(Ledger ledger, Tap tap) {
        try {
            Field field = Sql.class.getDeclaredField("connection");
            field.setAccessible(true);
            Connection real = (Connection) field.get(ledger.sql);
            field.set(ledger.sql, tapped(real, tap));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the ledger's wire can't be tapped", e);
        }
    }

    /** As "wal 2 1": journal, synchronous and foreign keys as the ledger's own connection has them. */
    public static String settings(Ledger ledger) {
        return ledger.sql
                        .first(row -> row.text("journal_mode"), "PRAGMA journal_mode")
                        .orElseThrow()
                + " "
                + ledger.sql.number("SELECT synchronous AS n FROM pragma_synchronous") + " "
                + ledger.sql.number("SELECT foreign_keys AS n FROM pragma_foreign_keys");
    }

    /** As the machine does when the process ends: what a ledger whose disk failed leaves open is let go. */
    public static void letGo(Ledger ledger) {
        if (ledger.gone().isEmpty()) return;
        try {
            Field field = Sql.class.getDeclaredField("connection");
            field.setAccessible(true);
            ((Connection) field.get(ledger.sql)).close();
        } catch (SQLException rolledBack) {
            // What was under way is rolled back when the ledger is opened again.
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the ledger can't be let go", e);
        }
    }

    /** Runs statements on the ledger's own connection. */
    public static void run(Ledger ledger, String statements) {
        ledger.sql.script(statements);
    }

    /** Statements are prepared once and kept, for a night asks the same thousands of times. */
    private static Connection tapped(Connection real, Tap tap) {
        Map<String, PreparedStatement> idle = new HashMap<>();
        return proxy(
                Connection.class,
                (method, values) -> {
                    if (method.equals("prepareStatement")) return prepared(real, (String) values[0], tap, idle);
                    if (method.equals("createStatement")) return plain(real.createStatement(), tap);
                    return null;
                },
                real);
    }

    private static PreparedStatement prepared(Connection real, String sql, Tap tap, Map<String, PreparedStatement> idle)
            throws SQLException {
        String instead = tap.instead(sql);
        String run = instead == null ? "SELECT 1" : instead;
        if (run.startsWith("VACUUM") || run.startsWith("PRAGMA")) forget(idle);
        PreparedStatement kept = idle.remove(run);
        PreparedStatement statement = kept == null ? real.prepareStatement(run) : kept;
        return proxy(
                PreparedStatement.class,
                (method, values) -> {
                    switch (method) {
                        case "executeUpdate":
                            tap.before(sql);
                            int rows = instead == null ? 1 : statement.executeUpdate();
                            tap.after(sql);
                            return rows;
                        case "executeQuery":
                            tap.before(sql);
                            return null;
                        case "setObject":
                            return instead == null ? DONE : null;
                        case "close":
                            statement.clearParameters();
                            PreparedStatement other = idle.put(run, statement);
                            if (other != null) other.close();
                            return DONE;
                        default:
                            return null;
                    }
                },
                statement);
    }

    /** A copy can only be made while no statement is under way. */
    private static void forget(Map<String, PreparedStatement> idle) throws SQLException {
        for (PreparedStatement one : idle.values()) one.close();
        idle.clear();
    }

    private static Statement plain(Statement statement, Tap tap) {
        return proxy(
                Statement.class,
                (method, values) -> {
                    if (!method.equals("executeUpdate")) return null;
                    String sql = (String) values[0];
                    String instead = tap.instead(sql);
                    tap.before(sql);
                    int rows = instead == null ? 0 : statement.executeUpdate(instead);
                    tap.after(sql);
                    return rows;
                },
                statement);
    }

    private static final Object DONE = new Object();

    /** Answers a call, or null where the real thing is to answer. */
    private interface Answer {
        Object to(String method, Object[] values) throws SQLException;
    }

    private static <T> T proxy(Class<T> type, Answer answer, T real) {
        return type.cast(Proxy.newProxyInstance(
                LedgerWire.class.getClassLoader(), new Class<?>[] {type}, (self, method, values) -> {
                    Object answered = answer.to(method.getName(), values);
                    if (answered == DONE) return null;
                    if (answered != null) return answered;
                    try {
                        return method.invoke(real, values);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                }));
    }
}
