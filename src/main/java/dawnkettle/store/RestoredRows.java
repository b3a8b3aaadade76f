package dawnkettle.store;

import dawnkettle.stock.LotCode;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** That the ledger was put back from a copy, and what may have gone out into the world between the two. */
public final class RestoredRows {
    private final Sql sql;

    RestoredRows(Sql sql) {
        this.sql = sql;
    }

    /**
     * One putting back.
     *
     * @param copy name of the copy
     * @param from the last instant that the copy knows of
     * @param isExact whether the ledger that was put aside could be read, so that only {@code labels} are in doubt
     * @param labels lots and products of which labels came out, or may have, after that instant
     */
    public record Restored(
            Instant at, String copy, Instant from, boolean isExact, Collection<LabelRows.Labelled> labels) {
        public Restored {
            labels = List.copyOf(labels);
        }
    }

    public void note(Restored restored) {
        sql.inTransaction(() -> {
            sql.write(
                    "INSERT INTO restored (at, copy, copied_at, is_exact) VALUES (?, ?, ?, ?)",
                    restored.at(),
                    restored.copy(),
                    restored.from(),
                    restored.isExact());
            for (LabelRows.Labelled label : restored.labels())
                sql.write(
                        "INSERT INTO restored_label (restored, lot, product) " + "SELECT max(seq), ?, ? FROM restored",
                        label.lot(),
                        label.product());
        });
    }

    /** The last putting back. */
    public Optional<Restored> last() {
        return sql.first(
                row -> new Restored(
                        row.instant("at"),
                        row.text("copy"),
                        row.instant("copied_at"),
                        row.flag("is_exact"),
                        labels(row.number("seq"))),
                "SELECT * FROM restored ORDER BY seq DESC LIMIT 1");
    }

    private List<LabelRows.Labelled> labels(long restored) {
        return sql.list(
                row -> new LabelRows.Labelled(new LotCode(row.text("lot")), row.text("product")),
                "SELECT lot, product FROM restored_label WHERE restored = ? ORDER BY lot, product",
                restored);
    }
}
