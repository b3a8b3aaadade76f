package dawnkettle.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongPredicate;

/**
 * The chain over what is only ever added: each link holds the hash of the one before it and of all rows since, so that an old
 * row that was changed, added or is missing is found. What came after the last link is not in it yet, and who can write the
 * file can write a whole new chain.
 */
public final class ChainRows {
    /** The first version of a ledger that has a chain; a copy of an older one has none. */
    private static final int VERSION = Migrations.STEPS.indexOf("014-chain.sql") + 1;

    /** In so many all is looked at (common practice, no source). */
    private static final int NIGHTS = 30;

    private final Sql sql;

    ChainRows(Sql sql) {
        this.sql = sql;
    }

    private record Link(long seq, String before, String hash) {}

    /** Adds a link over all rows since the last one, where there are any. @return how many rows it holds */
    public long add(Instant now) {
        return sql.inTransaction(() -> {
            List<ChainPart> parts = parts();
            if (parts.isEmpty()) return 0L;
            String before = last().map(Link::hash).orElse("");
            sql.write("INSERT INTO chain (at, before, hash) VALUES (?, ?, ?)", now, before, hash(before, parts));
            long link = last().orElseThrow().seq();
            for (ChainPart part : parts)
                sql.write("""
                        INSERT INTO chain_part (link, rows_of, from_key, to_key, columns, row_count, hash)
                        VALUES (?, ?, ?, ?, ?, ?, ?)""", link, part.rowsOf(), part.from(), part.to(), part.columns(), part.count(), part.hash());
            return parts.stream().mapToLong(ChainPart::count).sum();
        });
    }

    private static String hash(String before, List<ChainPart> parts) {
        List<String> lines = new ArrayList<>(List.of(before));
        parts.stream().map(ChainPart::line).sorted().forEach(lines::add);
        return ChainPart.sha256(lines);
    }

    private Optional<Link> last() {
        return sql.first(ChainRows::link, "SELECT * FROM chain ORDER BY seq DESC LIMIT 1");
    }

    private static Link link(Row row) throws java.sql.SQLException {
        return new Link(row.number("seq"), row.text("before"), row.text("hash"));
    }

    /** What is in no link yet. */
    private List<ChainPart> parts() {
        List<ChainPart> parts = new ArrayList<>();
        for (String table : ChainPart.NUMBERED) {
            long from = sql.number(
                    "SELECT coalesce(max(CAST(to_key AS INTEGER)), 0) AS n FROM chain_part WHERE rows_of = ?", table);
            long to = sql.number("SELECT coalesce(max(seq), 0) AS n FROM " + table);
            if (to > from) parts.add(ChainPart.of(sql, table, "" + from, "" + to));
        }
        for (String table : ChainPart.DAILY) parts.addAll(unlinked(table, "''"));
        for (String table : ChainPart.REVISED) parts.addAll(unlinked(table, "revision"));
        return parts;
    }

    private List<ChainPart> unlinked(String table, String second) {
        List<String[]> keys = sql.list(
                row -> new String[] {row.text("day"), row.text("second")},
                "SELECT DISTINCT production_date AS day, CAST(" + second + " AS TEXT) AS second FROM " + table + " AS t"
                        + " WHERE NOT EXISTS (SELECT 1 FROM chain_part WHERE rows_of = '" + table
                        + "' AND from_key = t.production_date AND to_key = CAST(" + second
                        + " AS TEXT)) ORDER BY 1, 2");
        return keys.stream()
                .map(key -> ChainPart.of(sql, table, key[0], key[1]))
                .toList();
    }

    /** What of the chain does not hold, each in a sentence, the oldest first; empty where all does. */
    public List<String> broken() {
        return broken(link -> true);
    }

    /**
     * The same of the last week's rows and of every thirtieth older night's, another each day, so that each night takes about
     * as long, and all is looked at in a month; the links themselves are looked at each time.
     */
    public List<String> brokenOf(LocalDate day) {
        long last = last().map(Link::seq).orElse(0L);
        return broken(link -> link > last - 7 || link % NIGHTS == day.toEpochDay() % NIGHTS);
    }

    private List<String> broken(LongPredicate isLookedAt) {
        if (Migrations.version(sql) < VERSION) return List.of();
        List<String> broken = new ArrayList<>();
        String before = "";
        for (Link link : sql.list(ChainRows::link, "SELECT * FROM chain ORDER BY seq")) {
            List<ChainPart> parts =
                    sql.list(ChainPart::read, "SELECT * FROM chain_part WHERE link = ? ORDER BY rows_of", link.seq());
            if (!link.before().equals(before) || !link.hash().equals(hash(before, parts)))
                broken.add("link " + link.seq() + " of the ledger's chain is not as it was written");
            for (ChainPart part : isLookedAt.test(link.seq()) ? parts : List.<ChainPart>of()) {
                ChainPart now = part.now(sql);
                if (!now.equals(part))
                    broken.add(part.said() + " are not as they were written: " + part.count() + " then, " + now.count()
                            + " now" + (now.count() == part.count() ? ", with other words" : ""));
            }
            before = link.hash();
        }
        return broken;
    }
}
