package dawnkettle.store;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.SQLException;
import java.util.HexFormat;
import java.util.List;

/**
 * Some rows of one table that are only ever added, and the SHA-256 (FIPS 180-4) of their text.
 *
 * @param from the number above which they lie, or their day
 * @param to the number up to which they lie, or their revision; empty where the day has none
 * @param columns of which the text is made, parted by commas: later versions may have more
 */
record ChainPart(String rowsOf, String from, String to, String columns, long count, String hash) {
    /** Tables whose rows are numbered. */
    static final List<String> NUMBERED = List.of(
            "order_line",
            "amendment",
            "step_event",
            "effect_event",
            "label_group",
            "record",
            "mail_in",
            "clock_event",
            "restored",
            "erasure");

    /** Tables whose rows of a day are written at once. */
    static final List<String> DAILY =
            List.of("book_close", "book_close_line", "soak_call", "soak_call_group", "soak_call_tub");

    /** Tables whose rows of a day and revision are written at once. */
    static final List<String> REVISED = List.of("plan", "plan_label", "plan_allocation");

    static ChainPart read(Row row) throws SQLException {
        return new ChainPart(
                row.text("rows_of"),
                row.text("from_key"),
                row.text("to_key"),
                row.text("columns"),
                row.number("row_count"),
                row.text("hash"));
    }

    /** The rows as they are now. */
    static ChainPart of(Sql sql, String rowsOf, String from, String to) {
        String columns = String.join(
                ",",
                sql.list(row -> row.text("name"), "SELECT name FROM pragma_table_info('" + rowsOf + "') ORDER BY cid"));
        return of(sql, new ChainPart(rowsOf, from, to, columns, 0, ""));
    }

    /** The same rows by the same columns, as they are now. */
    ChainPart now(Sql sql) {
        return of(sql, this);
    }

    private static ChainPart of(Sql sql, ChainPart part) {
        String text = "quote(" + part.columns.replace(",", ") || ',' || quote(") + ")";
        String query = "SELECT " + text + " AS text FROM " + part.rowsOf + " WHERE " + part.where() + " ORDER BY 1";
        List<String> rows = part.to.isEmpty()
                ? sql.list(row -> row.text("text"), query, part.from)
                : sql.list(row -> row.text("text"), query, part.from, part.to);
        return new ChainPart(part.rowsOf, part.from, part.to, part.columns, rows.size(), sha256(rows));
    }

    private String where() {
        if (NUMBERED.contains(rowsOf)) return "seq > CAST(? AS INTEGER) AND seq <= CAST(? AS INTEGER)";
        return DAILY.contains(rowsOf) ? "production_date = ?" : "production_date = ? AND revision = CAST(? AS INTEGER)";
    }

    /** As it goes into its link. */
    String line() {
        return String.join("|", rowsOf, from, to, columns, "" + count, hash);
    }

    /** In words. */
    String said() {
        if (NUMBERED.contains(rowsOf)) return "rows of \"" + rowsOf + "\" after number " + from + " up to " + to;
        return "rows of \"" + rowsOf + "\" of " + from + (to.isEmpty() ? "" : " revision " + to);
    }

    /** Of lines, each ended. */
    static String sha256(List<String> lines) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String line : lines) {
                digest.update(line.getBytes(UTF_8));
                digest.update((byte) '\n');
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
