package dawnkettle.store;

import java.sql.SQLException;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a person was to know at once: open, told, over. */
public final class AlarmRows {
    private final Sql sql;

    AlarmRows(Sql sql) {
        this.sql = sql;
    }

    /** Notes what is the matter now: what is new is opened, what is no longer so is over; what passes is opened once. */
    public void now(Collection<KeptAlarm> alarms, Instant now) {
        sql.inTransaction(() -> {
            Set<String> keys = alarms.stream().map(KeptAlarm::key).collect(Collectors.toSet());
            for (KeptAlarm open : open())
                if (!keys.contains(open.key())
                        && !(open.passes() && open.toldAt().isEmpty())) clear(open.key(), now);
            for (KeptAlarm alarm : alarms) if (!isKnown(alarm)) insert(alarm, now);
            return true;
        });
    }

    /** What is the matter, told or not, the oldest first. */
    public List<KeptAlarm> open() {
        return sql.list(AlarmRows::alarm, "SELECT * FROM alarm WHERE cleared_at IS NULL ORDER BY id");
    }

    /** What was told and is over, and of which nobody heard yet that it is. */
    public List<KeptAlarm> over() {
        return sql.list(AlarmRows::alarm, """
                SELECT * FROM alarm
                WHERE cleared_at IS NOT NULL AND told_at IS NOT NULL AND clear_told = 0 AND passes = 0 ORDER BY id""");
    }

    /** All that is open was told at this instant; what passes is over with it. */
    public void told(Instant now) {
        sql.inTransaction(() -> {
            sql.write("UPDATE alarm SET told_at = ? WHERE told_at IS NULL AND cleared_at IS NULL", now);
            return sql.write("UPDATE alarm SET cleared_at = ? WHERE passes = 1 AND cleared_at IS NULL", now);
        });
    }

    /** What was told at once and by itself, and is over with it. */
    public void passed(KeptAlarm alarm, Instant now) {
        sql.inTransaction(() -> {
            insert(alarm, now);
            return sql.write(
                    "UPDATE alarm SET told_at = ?, cleared_at = ? WHERE key = ? AND told_at IS NULL",
                    now,
                    now,
                    alarm.key());
        });
    }

    public void clearTold() {
        sql.write("UPDATE alarm SET clear_told = 1 WHERE cleared_at IS NOT NULL AND clear_told = 0");
    }

    /** When something was last told before now; what a clock that was ahead dated later does not count. */
    public Optional<Instant> lastTold(Instant now) {
        return sql.first(
                row -> row.instant("told_at"),
                "SELECT told_at FROM alarm WHERE told_at <= ? ORDER BY told_at DESC LIMIT 1",
                now);
    }

    /** How many mails told something between two instants. */
    public int mailsBetween(Instant from, Instant to) {
        return (int) sql.number(
                "SELECT count(DISTINCT told_at) AS n FROM alarm WHERE told_at >= ? AND told_at <= ?", from, to);
    }

    private boolean isKnown(KeptAlarm alarm) {
        String still = alarm.passes() ? "" : " AND cleared_at IS NULL";
        return sql.number("SELECT count(*) AS n FROM alarm WHERE key = ?" + still, alarm.key()) > 0;
    }

    private void insert(KeptAlarm alarm, Instant now) {
        sql.write(
                """
                INSERT INTO alarm (key, happened, safe, todo, useful_by, passes, opened_at)
                VALUES (?, ?, ?, ?, ?, ?, ?)""",
                alarm.key(),
                alarm.happened(),
                alarm.safe(),
                alarm.todo(),
                alarm.usefulBy().orElse(null),
                alarm.passes(),
                now);
    }

    private void clear(String key, Instant now) {
        sql.write("UPDATE alarm SET cleared_at = ? WHERE key = ? AND cleared_at IS NULL", now, key);
    }

    private static KeptAlarm alarm(Row row) throws SQLException {
        return new KeptAlarm(
                row.text("key"),
                row.text("happened"),
                row.text("safe"),
                row.text("todo"),
                row.findInstant("useful_by"),
                row.flag("passes"),
                row.findInstant("told_at"));
    }
}
