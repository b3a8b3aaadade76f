package dawnkettle.store;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What a ledger knows and an older copy of it does not.
 *
 * @param orders numbers of orders of which a line or a change is lost
 * @param firstOrder when the first of them was taken
 * @param files names of order files that were taken since
 * @param records how many records of the crew
 * @param days production days whose book was closed since
 * @param labels lots and products of which labels came out, or may have, since
 */
public record LostSince(
        List<String> orders,
        Optional<Instant> firstOrder,
        List<String> files,
        long records,
        List<String> days,
        List<LabelRows.Labelled> labels) {
    public LostSince {
        orders = List.copyOf(orders);
        files = List.copyOf(files);
        days = List.copyOf(days);
        labels = List.copyOf(labels);
    }

    /** Both lie on this machine; the copy is only read. */
    static LostSince between(Ledger ledger, Path copy) {
        Sql sql = ledger.sql;
        sql.write("ATTACH DATABASE ? AS copy", copy.toAbsolutePath().toUri() + "?immutable=1");
        try {
            return of(sql);
        } finally {
            sql.script("DETACH DATABASE copy");
        }
    }

    private static LostSince of(Sql sql) {
        return new LostSince(
                sql.list(row -> row.text("order_number"), """
                        SELECT order_number, min(taken_at) AS first FROM (
                            SELECT order_number, taken_at FROM main.order_line
                            WHERE seq > (SELECT coalesce(max(seq), 0) FROM copy.order_line)
                            UNION ALL SELECT order_number, taken_at FROM main.amendment
                            WHERE seq > (SELECT coalesce(max(seq), 0) FROM copy.amendment))
                        GROUP BY order_number ORDER BY first, order_number"""),
                sql.first(row -> row.instant("at"), """
                        SELECT min(taken_at) AS at FROM main.order_line
                        WHERE seq > (SELECT coalesce(max(seq), 0) FROM copy.order_line) HAVING at IS NOT NULL"""),
                sql.list(
                        row -> row.text("name"),
                        "SELECT name FROM main.dropped_file WHERE sha256 NOT IN (SELECT sha256 FROM copy.dropped_file) "
                                + "ORDER BY taken_at, name"),
                sql.number("SELECT count(*) AS n FROM main.record "
                        + "WHERE seq > (SELECT coalesce(max(seq), 0) FROM copy.record)"),
                sql.list(
                        row -> row.text("production_date"),
                        "SELECT production_date FROM main.book_close "
                                + "WHERE production_date NOT IN (SELECT production_date FROM copy.book_close) "
                                + "ORDER BY production_date"),
                labels(sql));
    }

    private static List<LabelRows.Labelled> labels(Sql sql) {
        boolean knowsFlights =
                sql.number("SELECT count(*) AS n FROM copy.sqlite_schema WHERE name = 'label_in_flight'") > 0;
        String flights = knowsFlights
                ? " UNION SELECT lot, product FROM main.label_in_flight "
                        + "WHERE seq > (SELECT coalesce(max(seq), 0) FROM copy.label_in_flight)"
                : " UNION SELECT lot, product FROM main.label_in_flight";
        return sql.list(
                row -> new LabelRows.Labelled(row.lot("lot"), row.text("product")),
                "SELECT lot, product FROM (SELECT lot, product FROM main.label_group "
                        + "WHERE seq > (SELECT coalesce(max(seq), 0) FROM copy.label_group)" + flights
                        + ") ORDER BY lot, product");
    }
}
