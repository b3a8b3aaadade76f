package dawnkettle.store;

import dawnkettle.stock.LotCode;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/** The journal of case labels: which surely came out, which perhaps, which were destroyed. */
public final class LabelRows {
    private final Sql sql;

    LabelRows(Sql sql) {
        this.sql = sql;
    }

    /** The effect's key of a run of labels, by which the conservation laws know that it is done. */
    public static String effectKey(LotCode lot, String product) {
        return "label/" + lot + "/" + product;
    }

    /** The printer said that they came out; a label is confirmed once. */
    public void confirmed(LabelGroup group, Instant at) {
        add(group, "confirmed", at, "");
    }

    /** They may have come out. */
    public void uncertain(LabelGroup group, Instant at, String why) {
        add(group, "uncertain", at, why);
    }

    /** A person destroyed them. */
    public void destroyed(LabelGroup group, Instant at, String why) {
        add(group, "void", at, why);
    }

    /** Labels of a lot's product that surely came out. */
    public int confirmedCount(LotCode lot, String product) {
        return (int) sql.number("""
                SELECT coalesce(sum(to_number - from_number + 1), 0) AS n FROM label_group
                WHERE lot = ? AND product = ? AND outcome = 'confirmed'""", lot, product);
    }

    /** Groups that perhaps came out and that nobody has confirmed or destroyed since. */
    public List<LabelGroup> unresolved() {
        return sql.list(LabelRows::group, """
                SELECT * FROM label_group AS g WHERE outcome = 'uncertain' AND NOT EXISTS (
                    SELECT 1 FROM label_group AS later
                    WHERE later.seq > g.seq AND later.lot = g.lot AND later.product = g.product
                      AND later.outcome <> 'uncertain'
                      AND later.from_number <= g.from_number AND later.to_number >= g.to_number)
                ORDER BY seq""");
    }

    /** Whether a label of the lot has, or may have, come out: from then on the lot stays as it is. */
    public boolean isFrozen(LotCode lot) {
        return sql.number(
                        "SELECT count(*) AS n FROM label_group WHERE lot = ? AND outcome IN ('confirmed', 'uncertain')",
                        lot)
                > 0;
    }

    /** Lots with a label out, and since when, by lot. */
    public List<LabelledLot> labelledFrom(Instant since) {
        return sql.list(row -> new LabelledLot(row.lot("lot"), row.instant("first_at")), """
                SELECT lot, min(at) AS first_at FROM label_group WHERE outcome IN ('confirmed', 'uncertain')
                GROUP BY lot HAVING min(at) >= ? ORDER BY lot""", since);
    }

    /** A lot and when its first label came out. */
    public record LabelledLot(LotCode lot, Instant at) {}

    private void add(LabelGroup group, String outcome, Instant at, String note) {
        sql.write("""
                INSERT INTO label_group (lot, product, from_number, to_number, outcome, at, note)
                VALUES (?, ?, ?, ?, ?, ?, ?)""", group.lot(), group.product(), group.from(), group.to(), outcome, at, note);
    }

    private static LabelGroup group(Row row) throws SQLException {
        return new LabelGroup(row.lot("lot"), row.text("product"), row.whole("from_number"), row.whole("to_number"));
    }
}
