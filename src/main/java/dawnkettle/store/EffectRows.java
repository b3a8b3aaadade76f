package dawnkettle.store;

import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What was to go out, and what is known of it. */
public final class EffectRows {
    private final Sql sql;

    EffectRows(Sql sql) {
        this.sql = sql;
    }

    /** Notes an intent; one noted before stays as it is. @return how it stands */
    public Effect intend(String key, Effect.Kind kind, LocalDate businessDate, Instant now) {
        return sql.inTransaction(() -> {
            sql.write("""
                    INSERT INTO effect (key, kind, business_date, state, intended_at, changed_at)
                    VALUES (?, ?, ?, 'intended', ?, ?) ON CONFLICT DO NOTHING""", key, kind, businessDate, now, now);
            return find(key).orElseThrow();
        });
    }

    /**
     * Committed before the first byte leaves: from intended, cleanly failed, or ambiguous where a second one is marked.
     *
     * @return false where it is done or on its way already, and nothing may be sent
     */
    public boolean sending(String key, Instant now) {
        return sql.write("""
                        UPDATE effect SET state = 'sending', attempts = attempts + 1, changed_at = ?, note = ''
                        WHERE key = ? AND state IN ('intended', 'failed', 'ambiguous')""", now, key) == 1;
    }

    public void done(String key, Instant now, String note) {
        move(key, Effect.State.DONE, now, note);
    }

    /** Surely nothing went out. */
    public void failed(String key, Instant now, String why) {
        move(key, Effect.State.FAILED, now, why);
    }

    public void ambiguous(String key, Instant now, String why) {
        move(key, Effect.State.AMBIGUOUS, now, why);
    }

    /** At the start of the service: what was on its way when it stopped is ambiguous. @return what that was */
    public List<Effect> interrupted(Instant now) {
        return sql.inTransaction(() -> {
            List<Effect> sending = in(Effect.State.SENDING);
            for (Effect effect : sending) ambiguous(effect.key(), now, "the service stopped while it was sent");
            return sending.stream()
                    .map(effect -> find(effect.key()).orElseThrow())
                    .toList();
        });
    }

    public Optional<Effect> find(String key) {
        return sql.first(EffectRows::effect, "SELECT * FROM effect WHERE key = ?", key);
    }

    /** How often nobody knew whether it went out. */
    public int timesInDoubt(String key) {
        return (int) sql.number("SELECT count(*) AS n FROM effect_event WHERE key = ? AND state = 'ambiguous'", key);
    }

    public List<Effect> in(Effect.State state) {
        return sql.list(EffectRows::effect, "SELECT * FROM effect WHERE state = ? ORDER BY intended_at, key", state);
    }

    public List<Effect> of(LocalDate businessDate) {
        return sql.list(
                EffectRows::effect,
                "SELECT * FROM effect WHERE business_date = ? ORDER BY intended_at, key",
                businessDate);
    }

    private void move(String key, Effect.State state, Instant now, String note) {
        int moved =
                sql.write("UPDATE effect SET state = ?, changed_at = ?, note = ? WHERE key = ?", state, now, note, key);
        if (moved != 1) throw new IllegalStateException("no effect " + key + " was intended");
    }

    private static Effect effect(Row row) throws SQLException {
        return new Effect(
                row.text("key"),
                row.word("kind", Effect.Kind.class),
                row.day("business_date"),
                row.word("state", Effect.State.class),
                row.whole("attempts"),
                row.instant("intended_at"),
                row.instant("changed_at"),
                row.text("note"));
    }
}
