package dawnkettle.store;

import dawnkettle.book.OrderBook;
import dawnkettle.book.StandingOrder;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.DiskAway;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.sqlite.SQLiteConfig;

/**
 * The ledger: one SQLite file that says what was ordered, decided, done and recorded.
 *
 * <p>It has one connection, used by one thread at a time; a second program (a command beside the service) waits up to
 * ten seconds for its turn. A write is on the disk when its method returns. Instants are kept to the millisecond.
 */
public final class Ledger implements AutoCloseable {
    private static final int BUSY_MILLIS = 10_000;

    /** What the write-ahead file is cut back to after a checkpoint. */
    private static final int JOURNAL_BYTES = 8 << 20;

    private final Path file;
    private final Connection connection;
    final Sql sql;

    private Ledger(Path file, Connection connection, Sql sql) {
        this.file = file;
        this.connection = connection;
        this.sql = sql;
    }

    /**
     * Opens the ledger, makes it where there is none, and brings it to this version's shape.
     *
     * @throws dawnkettle.trouble.DeviceAway where the file cannot be used
     */
    public static Ledger open(Path file) {
        LedgerTrouble trouble = new LedgerTrouble(file);
        Connection connection = null;
        boolean open = false;
        try {
            connection = settings().createConnection("jdbc:sqlite:" + file.toAbsolutePath());
            Sql sql = new Sql(connection, trouble);
            Migrations.run(sql, trouble, file);
            open = true;
            return new Ledger(file, connection, sql);
        } catch (SQLException e) {
            throw trouble.of(e);
        } finally {
            if (!open && connection != null) closeQuietly(connection);
        }
    }

    static SQLiteConfig settings() {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(BUSY_MILLIS);
        config.setJournalSizeLimit(JOURNAL_BYTES);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        return config;
    }

    public Path file() {
        return file;
    }

    /** All of {@code work} is written, or none of it; inside another call it becomes part of that one. */
    public <T> T inTransaction(Supplier<T> work) {
        return sql.inTransaction(work);
    }

    public void inTransaction(Runnable work) {
        sql.inTransaction(work);
    }

    public OrderRows orders() {
        return new OrderRows(sql);
    }

    public CloseRows closes() {
        return new CloseRows(sql);
    }

    public StepRows steps() {
        return new StepRows(sql);
    }

    public EffectRows effects() {
        return new EffectRows(sql);
    }

    public LabelRows labels() {
        return new LabelRows(sql);
    }

    public OutboxRows outbox() {
        return new OutboxRows(sql);
    }

    public MailRows mails() {
        return new MailRows(sql);
    }

    public AlarmRows alarms() {
        return new AlarmRows(sql);
    }

    public SoakRows soaks() {
        return new SoakRows(sql);
    }

    public PlanRows plans() {
        return new PlanRows(sql);
    }

    public RecordRows records() {
        return new RecordRows(sql);
    }

    public StockRows stock() {
        return new StockRows(sql);
    }

    public ClockRows clock() {
        return new ClockRows(sql);
    }

    public UnconfirmedRows unconfirmed() {
        return new UnconfirmedRows(sql);
    }

    public StartRows starts() {
        return new StartRows(sql);
    }

    public RestoredRows restored() {
        return new RestoredRows(sql);
    }

    public ErasedRows erased() {
        return new ErasedRows(sql);
    }

    public ChainRows chain() {
        return new ChainRows(sql);
    }

    public TraceRows trace() {
        return new TraceRows(sql);
    }

    /**
     * The order book with the lines to be delivered on or after a day, and every close that holds one of them or
     * comes after it.
     */
    public OrderBook book(Shop shop, List<StandingOrder> standing, LocalDate deliveredFrom) {
        return inTransaction(() -> new OrderBook(
                shop,
                orders().lines(deliveredFrom),
                orders().amendments(deliveredFrom),
                standing,
                closes().holding(deliveredFrom)));
    }

    /** Which conservation laws a production day breaks, each in a sentence; empty where all hold. */
    public List<String> broken(LocalDate productionDate) {
        return new Conservation(sql, productionDate).broken();
    }

    /** Moves what the write-ahead file holds into the ledger and cuts that file back. */
    public void checkpoint() {
        sql.list(row -> true, "PRAGMA wal_checkpoint(TRUNCATE)");
    }

    /**
     * Writes a whole copy into a file that is not there yet, and proves that it opens, is sound and holds as much.
     *
     * @return the copy, which has no checksum yet
     */
    public LedgerCopy copyTo(Path copy) {
        sql.write("VACUUM INTO ?", copy.toAbsolutePath().toString());
        LedgerCopy made = new LedgerCopy(copy);
        LedgerCopy.Verdict verdict = made.checkedAsMade();
        if (!verdict.isSound() || !verdict.rows().equals(rowCounts()))
            throw new LedgerTrouble(copy)
                    .clean("this copy does not hold what the ledger holds", "copy again, and look at the disk", null);
        return made;
    }

    /** How many rows each table holds, by its name. */
    public Map<String, Long> rowCounts() {
        return LedgerCopy.rows(sql);
    }

    /** Which step of its shape it has taken. */
    public int version() {
        return Migrations.version(sql);
    }

    /** The statements that its tables, rules and views were made with. */
    public List<String> schema() {
        return sql.list(
                row -> row.text("sql") + ";", "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY rowid");
    }

    /** Its own account of its soundness: what SQLite finds wrong in it; empty where nothing is. */
    public List<String> faults() {
        return LedgerCopy.faults(sql);
    }

    /** Why the disk under it is not asked any more, where it failed; the process then ends. */
    public Optional<DiskAway> gone() {
        return Optional.ofNullable(sql.gone());
    }

    /** Whether the disk had no room for something since this was last asked. */
    public boolean wasFull() {
        return sql.wasFull();
    }

    /** Where the disk failed nothing is written any more, not even what closing would write. */
    @Override
    public void close() {
        if (gone().isEmpty()) closeQuietly(connection);
    }

    private static void closeQuietly(Connection connection) {
        try {
            connection.close();
        } catch (SQLException nothingIsLost) {
            // Everything written was committed before; an unfinished transaction is rolled back at the next opening.
        }
    }
}
