package dawnkettle.store;

import dawnkettle.book.Amendment;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** Order lines, amendments and the dropped files they came from: only ever added. */
public final class OrderRows {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT);

    private final Sql sql;

    OrderRows(Sql sql) {
        this.sql = sql;
    }

    /**
     * Adds lines in their order. A line that is there already with the same content counts once; one with other content
     * is kept beside the first, and the book shows the two as a conflict.
     *
     * @return how many were new
     */
    public int add(List<OrderLine> lines) {
        return sql.inTransaction(() -> lines.stream().mapToInt(this::add).sum());
    }

    private int add(OrderLine line) {
        return sql.write(
                """
                INSERT INTO order_line
                    (order_number, line, customer, product, packs, delivery_date, source, origin, taken_at)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
                ON CONFLICT (order_number, line, customer, product, packs, delivery_date) DO NOTHING""",
                line.order(),
                line.line(),
                line.customer(),
                line.product(),
                line.packs(),
                line.deliveryDate(),
                line.source(),
                line.origin(),
                line.takenAt());
    }

    /** Adds amendments in their order. Each counts, so that a file's may be added once only: {@link #takeFile}. */
    public void amend(List<Amendment> amendments) {
        sql.inTransaction(() -> amendments.forEach(amendment -> sql.write(
                """
                INSERT INTO amendment (order_number, line, packs, source, origin, taken_at, late)
                VALUES (?, ?, ?, ?, ?, ?, ?)""",
                amendment.order(),
                amendment.line(),
                amendment.packs(),
                amendment.source(),
                amendment.origin(),
                amendment.takenAt(),
                amendment.late())));
    }

    /**
     * Remembers a file by its SHA-256, in the transaction that adds what it holds.
     *
     * @return false where it was taken before, and its amendments with it
     */
    public boolean takeFile(String sha256, String name, Instant at) {
        return sql.write(
                        "INSERT INTO dropped_file (sha256, name, taken_at) VALUES (?, ?, ?) ON CONFLICT DO NOTHING",
                        sha256,
                        name,
                        at)
                == 1;
    }

    public boolean isTaken(String sha256) {
        return sql.number("SELECT count(*) AS n FROM dropped_file WHERE sha256 = ?", sha256) == 1;
    }

    /** Lines to be delivered on or after a day, in the order they were taken; conflicting ones after the first. */
    public List<OrderLine> lines(LocalDate deliveredFrom) {
        return sql.list(
                OrderRows::line, "SELECT * FROM order_line WHERE delivery_date >= ? ORDER BY seq", deliveredFrom);
    }

    /** Amendments of those lines, and of lines that are not there, in the order they were taken. */
    public List<Amendment> amendments(LocalDate deliveredFrom) {
        return sql.list(OrderRows::amendment, """
                SELECT * FROM amendment AS a
                WHERE NOT EXISTS (SELECT 1 FROM order_line AS l
                                  WHERE l.order_number = a.order_number AND l.line = a.line AND l.delivery_date < ?)
                ORDER BY seq""", deliveredFrom);
    }

    /** A number that no line has yet, as C-20261203-2 for an order of the command line, M-20261203-2 for one by mail. */
    public OrderNumber freeNumber(String letter, LocalDate today) {
        String stem = letter + "-" + DAY.format(today) + "-";
        long taken = sql.number(
                "SELECT count(DISTINCT order_number) AS n FROM order_line WHERE order_number GLOB ?", stem + "*");
        return new OrderNumber(stem + (taken + 1));
    }

    private static OrderLine line(Row row) throws SQLException {
        return new OrderLine(
                new OrderNumber(row.text("order_number")),
                row.whole("line"),
                row.text("customer"),
                row.text("product"),
                row.whole("packs"),
                row.day("delivery_date"),
                row.word("source", OrderLine.Source.class),
                row.text("origin"),
                row.instant("taken_at"));
    }

    private static Amendment amendment(Row row) throws SQLException {
        return new Amendment(
                new OrderNumber(row.text("order_number")),
                row.whole("line"),
                row.whole("packs"),
                row.word("source", OrderLine.Source.class),
                row.text("origin"),
                row.instant("taken_at"),
                row.flag("late"));
    }
}
