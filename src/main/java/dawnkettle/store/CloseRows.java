package dawnkettle.store;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The book's closes: one a production day, never changed. */
public final class CloseRows {
    private final Sql sql;

    CloseRows(Sql sql) {
        this.sql = sql;
    }

    /** Keeps a close; where the day is closed already, nothing changes and the first close is the answer. */
    public ClosedBook close(ClosedBook book) {
        return sql.inTransaction(() -> find(book.productionDate()).orElseGet(() -> {
            sql.write(
                    "INSERT INTO book_close (production_date, closed_at, line_count, pack_count) VALUES (?, ?, ?, ?)",
                    book.productionDate(),
                    book.closedAt(),
                    book.lines().size(),
                    book.packs());
            for (int i = 0; i < book.lines().size(); i++)
                add(book.productionDate(), i + 1, book.lines().get(i));
            return find(book.productionDate()).orElseThrow();
        }));
    }

    public Optional<ClosedBook> find(LocalDate productionDate) {
        return closesWhere("production_date = ?", productionDate).stream().findFirst();
    }

    /** Closes that hold a line to be delivered on or after a day, or are of that day or a later one. */
    public List<ClosedBook> holding(LocalDate deliveredFrom) {
        return closesWhere("""
                (production_date >= ?1 OR production_date IN
                    (SELECT production_date FROM book_close_line WHERE delivery_date >= ?1))""", deliveredFrom);
    }

    private List<ClosedBook> closesWhere(String condition, LocalDate day) {
        return sql.list(
                row -> new ClosedBook(
                        row.day("production_date"), row.instant("closed_at"), lines(row.day("production_date"))),
                "SELECT production_date, closed_at FROM book_close WHERE " + condition + " ORDER BY production_date",
                day);
    }

    private List<BookLine> lines(LocalDate productionDate) {
        return sql.list(
                CloseRows::line,
                "SELECT * FROM book_close_line WHERE production_date = ? ORDER BY place",
                productionDate);
    }

    private void add(LocalDate productionDate, int place, BookLine line) {
        sql.write(
                """
                INSERT INTO book_close_line (order_number, line, production_date, place, customer, route, product,
                                             packs, delivery_date, source)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""",
                line.order(),
                line.line(),
                productionDate,
                place,
                line.customer(),
                line.route(),
                line.product(),
                line.packs(),
                line.deliveryDate(),
                line.source());
    }

    private static BookLine line(Row row) throws SQLException {
        return new BookLine(
                new OrderNumber(row.text("order_number")),
                row.whole("line"),
                row.text("customer"),
                row.text("route"),
                row.text("product"),
                row.whole("packs"),
                row.day("delivery_date"),
                row.day("production_date"),
                row.word("source", OrderLine.Source.class),
                false);
    }
}
