package dawnkettle.store;

import dawnkettle.stock.LotCode;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/** The journal of case labels: which surely came out, which perhaps, which were destroyed. */
public final class LabelRows {
    private static final String RUN = "label/";

    private final Sql sql;

    LabelRows(Sql sql) {
        this.sql = sql;
    }

    /** The effect's key of a run of labels, by which the conservation laws know that it is done. */
    public static String effectKey(LotCode lot, String product) {
        return RUN + lot + "/" + product;
    }

    /** Whether an effect's key is that of a run of labels, and not of some printed once more by hand. */
    public static boolean isRun(String effectKey) {
        return effectKey.startsWith(RUN);
    }

    /** The lot whose run of labels an effect's key names. */
    public static LotCode lotOf(String effectKey) {
        return new LotCode(effectKey.substring(RUN.length(), effectKey.indexOf('/', RUN.length())));
    }

    /** The printer said that they came out; a label is confirmed once. */
    public void confirmed(LabelGroup group, Instant at) {
        add(group, "confirmed", at, "");
    }

    /** A person has them in hand. */
    public void found(LabelGroup group, Instant at, String why) {
        add(group, "confirmed", at, why);
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

    /** Which of a lot's product surely came out. */
    public LabelNumbers certain(LotCode lot, String product) {
        return replayed(lot, product, "confirmed", "");
    }

    /** Which perhaps came out, and nobody has confirmed or destroyed since. */
    public LabelNumbers doubtful(LotCode lot, String product) {
        return replayed(lot, product, "uncertain", "confirmed void");
    }

    /** What is left of the groups of one outcome once later groups of others have taken their numbers away. */
    private LabelNumbers replayed(LotCode lot, String product, String outcome, String others) {
        LabelNumbers numbers = LabelNumbers.none();
        for (Noted noted : sql.list(
                Noted::of, "SELECT * FROM label_group WHERE lot = ? AND product = ? ORDER BY seq", lot, product)) {
            if (noted.outcome().equals(outcome)) numbers = numbers.plus(noted.from(), noted.to());
            else if (others.contains(noted.outcome()))
                numbers = numbers.minus(LabelNumbers.of(noted.from(), noted.to()));
        }
        return numbers;
    }

    private record Noted(int from, int to, String outcome) {
        static Noted of(Row row) throws SQLException {
            return new Noted(row.whole("from_number"), row.whole("to_number"), row.text("outcome"));
        }
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

    /** Lots and products of which a label was ever in doubt, the oldest first. */
    public List<Labelled> onceInDoubt() {
        return sql.list(Labelled::of, """
                SELECT lot, product, min(seq) AS first FROM label_group WHERE outcome = 'uncertain'
                GROUP BY lot, product ORDER BY first""");
    }

    /** A product of a lot. */
    public record Labelled(LotCode lot, String product) {
        static Labelled of(Row row) throws SQLException {
            return new Labelled(row.lot("lot"), row.text("product"));
        }
    }

    /** Committed before their first byte leaves. */
    public void inFlight(LabelGroup group, Instant at) {
        sql.write("""
                INSERT INTO label_in_flight (lot, product, from_number, to_number, at) VALUES (?, ?, ?, ?, ?)""", group.lot(), group.product(), group.from(), group.to(), at);
    }

    /** What became of them is noted, or surely nothing of them was sent. */
    public void landed(LotCode lot, String product, Instant at) {
        sql.write("""
                UPDATE label_in_flight SET landed_at = ? WHERE lot = ? AND product = ? AND landed_at IS NULL""", at, lot, product);
    }

    /** Groups that were about to be sent, and nothing was noted of them since. */
    public List<LabelGroup> inFlight() {
        return sql.list(
                row -> new LabelGroup(
                        row.lot("lot"), row.text("product"), row.whole("from_number"), row.whole("to_number")),
                "SELECT * FROM label_in_flight WHERE landed_at IS NULL ORDER BY seq");
    }

    private void add(LabelGroup group, String outcome, Instant at, String note) {
        sql.write("""
                INSERT INTO label_group (lot, product, from_number, to_number, outcome, at, note)
                VALUES (?, ?, ?, ?, ?, ?, ?)""", group.lot(), group.product(), group.from(), group.to(), outcome, at, note);
    }
}
