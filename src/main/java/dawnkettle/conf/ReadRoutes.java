package dawnkettle.conf;

import dawnkettle.shop.Route;
import java.time.DayOfWeek;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads {@code routes.csv}: the vans' rounds. */
final class ReadRoutes {
    static final String FILE = "routes.csv";
    static final List<String> COLUMNS =
            List.of("code", "name", "days", "departs", "load_minutes", "cases", "weight", "made_same_day");

    private final Known known;

    ReadRoutes(Known known) {
        this.known = known;
    }

    List<Route> read(Rows rows) {
        if (!rows.whole()) known.routes.notWhole();
        return rows.cells().stream().flatMap(row -> one(row).stream()).toList();
    }

    private Optional<Route> one(Cells row) {
        int before = row.problems().count();
        String code = known.routes.declare(row.in("code"));
        String name = row.in("name").words();
        Written written = row.in("days");
        Set<DayOfWeek> days = ReadStations.weekdays(written.parts());
        if (written.isBlank()) written.bad(0, "is empty: the route never runs", "write its weekdays, as mon;wed;fri");
        var departs = row.in("departs").time();
        int loadMinutes = row.in("load_minutes").whole(0, 600);
        int cases = row.in("cases").whole(1, 100_000);
        int weight = row.find("weight").map(cell -> cell.whole(1, 1_000)).orElse(1);
        boolean madeSameDay = row.in("made_same_day").truth();
        if (row.problems().count() > before) return Optional.empty();
        return Optional.of(new Route(code, name, days, departs, loadMinutes, cases, weight, madeSameDay));
    }
}
