package dawnkettle.store;

import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Holds;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What happened, as people wrote it down: only ever added. */
public final class RecordRows {
    private static final String ROOM = "'away', 'down', 'up'";

    private final Sql sql;

    RecordRows(Sql sql) {
        this.sql = sql;
    }

    /**
     * Adds a record; the same origin says a kind of fact once, so that a mail or a file read twice counts once.
     *
     * @return false where it was there before
     * @throws IllegalStateException where the same origin said something else before
     */
    public boolean add(Recorded recorded) {
        return sql.inTransaction(() -> {
            String word = FactColumns.word(recorded.fact());
            if (insert(word, recorded)) return true;
            Fact before = sql.first(
                            RecordRows::recorded,
                            "SELECT * FROM record WHERE origin = ? AND kind = ?",
                            recorded.origin(),
                            word)
                    .orElseThrow()
                    .fact();
            if (!before.equals(recorded.fact()))
                throw new IllegalStateException(
                        "\"" + recorded.origin() + "\" has recorded another " + word + " before");
            return false;
        });
    }

    private boolean insert(String word, Recorded recorded) {
        Map<String, Object> columns = FactColumns.of(recorded.fact());
        List<Object> values =
                new ArrayList<>(List.of(word, recorded.happenedAt(), recorded.recordedAt(), recorded.origin()));
        values.addAll(columns.values());
        return sql.write(
                        "INSERT INTO record (kind, happened_at, recorded_at, origin"
                                + columns.keySet().stream()
                                        .map(name -> ", " + name)
                                        .collect(Collectors.joining())
                                + ") VALUES (" + String.join(", ", Collections.nCopies(values.size(), "?"))
                                + ") ON CONFLICT (origin, kind) DO NOTHING",
                        values.toArray())
                == 1;
    }

    /** Records of a kind that happened from one instant until another, in the order they happened. */
    public List<Recorded> of(Fact.Kind kind, Instant fromInclusive, Instant untilExclusive) {
        return sql.list(
                RecordRows::recorded,
                "SELECT * FROM record_standing WHERE kind IN (" + words(kind)
                        + ") AND happened_at >= ? AND happened_at < ? ORDER BY happened_at, seq",
                fromInclusive,
                untilExclusive);
    }

    /** All records of some kinds, in the order they happened. */
    public List<Recorded> all(Fact.Kind... kinds) {
        return sql.list(
                RecordRows::recorded,
                "SELECT * FROM record_standing WHERE kind IN ("
                        + Arrays.stream(kinds).map(RecordRows::words).collect(Collectors.joining(", "))
                        + ") ORDER BY happened_at, seq");
    }

    /** What is held and what was released, in the order in which it was written down; a bought lot holds what is made with it. */
    public Holds holds(Shop shop) {
        List<Recorded> said = sql.list(
                RecordRows::recorded,
                "SELECT * FROM record_standing WHERE kind IN ('held', 'released', 'held-bought', 'released-bought')"
                        + " ORDER BY seq");
        boolean ofBought = said.stream().anyMatch(one -> one.fact() instanceof Fact.HeldBought);
        return ofBought ? new Holds(said, new TraceRows(sql).lots(shop)::madeWith) : new Holds(said);
    }

    /** The number under which the last record was written. */
    public long lastNumber() {
        return sql.number("SELECT coalesce(max(seq), 0) AS n FROM record");
    }

    /** A record by its number, also where it counts no more. */
    public Optional<Recorded> find(long number) {
        return sql.first(RecordRows::recorded, "SELECT * FROM record WHERE seq = ?", number);
    }

    /** Whether a record that is there was cancelled. */
    public boolean isCancelled(long number) {
        return sql.number("SELECT count(*) AS n FROM record WHERE cancels = ?", number) > 0;
    }

    /** The number of the record that wrote a whole lot off, where it counts. */
    public Optional<Long> lossOf(LotCode lot) {
        return sql.first(
                row -> row.number("seq"),
                "SELECT seq FROM record_standing WHERE kind = 'lost-batch' AND lot = ? ORDER BY seq DESC LIMIT 1",
                lot);
    }

    /** Who is away and what stands on a making day, in the order in which it was written down. */
    public List<Recorded> ofRoom(LocalDate productionDate) {
        return sql.list(
                RecordRows::recorded,
                "SELECT * FROM record_standing WHERE kind IN (" + ROOM + ") AND day = ? ORDER BY seq",
                productionDate);
    }

    /** The number of the last record after an instant that says, or takes back, who is away or what stands on a day. */
    public Optional<Long> roomChangedSince(LocalDate productionDate, Instant since) {
        return sql.first(
                row -> row.number("seq"),
                "SELECT r.seq AS seq FROM record AS r LEFT JOIN record AS c ON c.seq = r.cancels"
                        + " WHERE coalesce(c.kind, r.kind) IN (" + ROOM + ") AND coalesce(c.day, r.day) = ?"
                        + " AND r.recorded_at > ? ORDER BY r.seq DESC LIMIT 1",
                productionDate,
                since);
    }

    /** Records of some kinds about the lots of a making day, in the order they happened. */
    public List<Recorded> all(LocalDate productionDate, Fact.Kind... kinds) {
        return sql.list(
                RecordRows::recorded,
                "SELECT * FROM record_standing WHERE lot GLOB ? AND kind IN ("
                        + Arrays.stream(kinds).map(RecordRows::words).collect(Collectors.joining(", "))
                        + ") ORDER BY happened_at, seq",
                LotCode.dayOf(productionDate) + "-*");
    }

    private static String words(Fact.Kind kind) {
        String word = Sql.word(kind);
        return switch (kind) {
            case COUNTED -> "'counted-material', 'counted-packs'";
            case LOST -> "'lost-batch', 'lost-packs', 'lost-material'";
            case DOWN -> "'down', 'up'";
            case USED -> "'used-material'";
            case HELD -> "'held', 'held-bought'";
            case RELEASED -> "'released', 'released-bought'";
            default -> "'" + word + "'";
        };
    }

    private static Recorded recorded(Row row) throws SQLException {
        return new Recorded(
                FactColumns.fact(row), row.instant("happened_at"), row.instant("recorded_at"), row.text("origin"));
    }
}
