package dawnkettle.night;

import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.stock.LotCode;
import dawnkettle.store.Effect;
import dawnkettle.trouble.DeviceAway;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Prints pick and route sheets once more where a lot on them is held after they were printed, as long as a van is still here. */
final class PrintHolds {
    /** Vans of a production day leave on it or on the days before the next making day. */
    private static final int DAYS_ON_THE_WAY = 4;

    private final Office office;
    private final PrintSheets sheets;

    PrintHolds(Office office, PrintSheets sheets) {
        this.office = office;
        this.sheets = sheets;
    }

    /** Looks at the plans only where something is held at all: it is asked each minute. */
    void run() {
        Set<LotCode> held = office.ledger().records().holds().held();
        if (held.isEmpty()) return;
        LocalDate today = office.now().atZone(office.shop().house().zone()).toLocalDate();
        for (LocalDate day : office.ledger().plans().days())
            if (day.isAfter(today.minusDays(DAYS_ON_THE_WAY)))
                office.plan(day).ifPresent(plan -> run(plan, news(plan, held)));
    }

    private void run(DayPlan plan, Set<LotCode> news) {
        if (news.isEmpty() || isResting(plan, news)) return;
        try {
            int printed = sheets.printHeld(plan, news);
            if (printed > 0)
                office.tell(printed + " sheets with held lots are printed again: "
                        + String.join(", ", news.stream().map(LotCode::toString).toList()));
        } catch (DeviceAway away) {
            office.tell("sheets with held lots are not printed: " + away.getMessage());
        }
    }

    /** Lots that a van which is still here would take, and that were held only after the pick sheet came out. */
    private Set<LotCode> news(DayPlan plan, Set<LotCode> held) {
        Set<LotCode> news = new TreeSet<>();
        Optional<Instant> printed = office.ledger()
                .effects()
                .find(PrintSheets.key(plan, "pick"))
                .filter(effect -> effect.state() == Effect.State.DONE)
                .map(Effect::intendedAt);
        if (printed.isEmpty()) return news;
        for (Allocation line : plan.allocation())
            if (held.contains(line.lot())
                    && !office.ledger().records().holds().wasHeld(line.lot(), printed.get())
                    && isHere(plan, line)) news.add(line.lot());
        return news;
    }

    private boolean isHere(DayPlan plan, Allocation line) {
        List<PlannedRoute> vans = plan.routes().stream()
                .filter(van -> van.route().equals(line.route()))
                .toList();
        return vans.isEmpty() || vans.stream().anyMatch(van -> van.departs().isAfter(office.now()));
    }

    private boolean isResting(DayPlan plan, Set<LotCode> news) {
        return office.ledger()
                .effects()
                .find(PrintSheets.heldKey(plan, news, "pick"))
                .filter(effect -> effect.state() == Effect.State.DONE
                        || office.now().isBefore(effect.changedAt().plus(Night.wait(effect.attempts()))))
                .isPresent();
    }
}
