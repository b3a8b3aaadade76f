package dawnkettle.store;

import dawnkettle.measure.Mass;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Soak calls: one a production day, and a tub once called is not taken back. */
public final class SoakRows {
    private static final String BREAK = "\n";

    private final Sql sql;
    private final String table;

    SoakRows(Sql sql) {
        this(sql, "soak_call");
    }

    /** @param table the first of three, whose names begin alike */
    SoakRows(Sql sql, String table) {
        this.sql = sql;
        this.table = table;
    }

    /** Keeps a call; where the day has one already, nothing changes and the first is the answer. */
    public SoakCall commit(SoakCall call) {
        return sql.inTransaction(() -> find(call.productionDate()).orElseGet(() -> {
            sql.write(
                    "INSERT INTO " + table + " (production_date, decided_at, notes) VALUES (?, ?, ?)",
                    call.productionDate(),
                    call.decidedAt(),
                    String.join(BREAK, call.notes()));
            for (int i = 0; i < call.groups().size(); i++)
                sql.write(
                        "INSERT INTO " + table
                                + "_group (production_date, place, soak_group, beans_mg) VALUES (?, ?, ?, ?)",
                        call.productionDate(),
                        i + 1,
                        call.groups().get(i).soakGroup(),
                        call.groups().get(i).beans());
            for (int i = 0; i < call.tubs().size(); i++)
                add(call.productionDate(), i + 1, call.tubs().get(i));
            return find(call.productionDate()).orElseThrow();
        }));
    }

    public Optional<SoakCall> find(LocalDate productionDate) {
        return sql.first(
                row -> new SoakCall(
                        row.day("production_date"),
                        row.instant("decided_at"),
                        tubs(productionDate),
                        groups(productionDate),
                        parts(row.text("notes"))),
                "SELECT * FROM " + table + " WHERE production_date = ?",
                productionDate);
    }

    private List<PlannedSoak> tubs(LocalDate productionDate) {
        return sql.list(
                SoakRows::tub,
                "SELECT * FROM " + table + "_tub WHERE production_date = ? ORDER BY place",
                productionDate);
    }

    private List<SoakCall.GroupMass> groups(LocalDate productionDate) {
        return sql.list(
                row -> new SoakCall.GroupMass(row.text("soak_group"), row.mass("beans_mg")),
                "SELECT * FROM " + table + "_group WHERE production_date = ? ORDER BY place",
                productionDate);
    }

    private void add(LocalDate productionDate, int place, PlannedSoak tub) {
        sql.write(
                "INSERT INTO " + table + """
                _tub (production_date, place, tub, soak_group, beans_mg, bean_lots, water_mg,
                    water_tenths, room_tenths, source, fill_at, ready_at, latest_grind_at, equivalent_minutes,
                    left_over_mg, lot_beans_mg)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""",
                productionDate,
                place,
                tub.tub(),
                tub.soakGroup(),
                tub.beans(),
                String.join(BREAK, tub.beanLots()),
                tub.water(),
                tub.waterTemperature(),
                tub.room(),
                tub.source(),
                tub.fillAt(),
                tub.readyAt(),
                tub.latestGrindAt(),
                tub.equivalentMinutes(),
                tub.leftOver(),
                tub.lotBeans().stream()
                        .map(beans -> Long.toString(beans.milligrams()))
                        .collect(Collectors.joining(BREAK)));
    }

    private static PlannedSoak tub(Row row) throws SQLException {
        return new PlannedSoak(
                row.text("tub"),
                row.text("soak_group"),
                row.mass("beans_mg"),
                parts(row.text("bean_lots")),
                row.mass("water_mg"),
                row.celsius("water_tenths"),
                row.celsius("room_tenths"),
                row.text("source"),
                row.instant("fill_at"),
                row.instant("ready_at"),
                row.instant("latest_grind_at"),
                row.whole("equivalent_minutes"),
                row.mass("left_over_mg"),
                List.of(),
                Optional.empty(),
                parts(row.text("lot_beans_mg")).stream()
                        .map(beans -> Mass.milligrams(Long.parseLong(beans)))
                        .toList());
    }

    /** Several short texts kept in one column, one a line. */
    static List<String> parts(String joined) {
        return joined.isEmpty() ? List.of() : List.of(joined.split(BREAK));
    }
}
