package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakLook;
import dawnkettle.plan.SoakLooks;
import dawnkettle.plan.SoakObservation;
import dawnkettle.shop.Tub;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Fact.SoakSeen;
import dawnkettle.stock.Recorded;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The soak constants that a production day is planned with, by the looks that were written down before the working day
 * ahead of it, so that its soak call and its plan count alike; and by looks at the day's own tubs, which a revision knows.
 */
final class CountedSoaks {
    /** The last looks; more say nothing new, and each costs a plan to read (our choice, no source). */
    private static final int MEMORY = 200;

    private final Office office;

    CountedSoaks(Office office) {
        this.office = office;
    }

    SoakLooks of(LocalDate productionDate) {
        Map<LocalDate, List<PlannedSoak>> days = new HashMap<>();
        List<SoakLook> looks = new ArrayList<>();
        for (Recorded one : seen(productionDate)) {
            LocalDate day = ((SoakSeen) one.fact()).productionDate();
            look(one, days.computeIfAbsent(day, this::soaks)).ifPresent(looks::add);
        }
        return SoakLooks.of(looks);
    }

    private List<Recorded> seen(LocalDate productionDate) {
        Instant until = office.shop()
                .calendar()
                .previous(productionDate)
                .atStartOfDay(office.shop().house().zone())
                .toInstant();
        List<Recorded> seen = office.ledger().records().all(Fact.Kind.SOAK_SEEN).stream()
                .filter(one -> one.recordedAt().isBefore(until)
                        || ((SoakSeen) one.fact()).productionDate().equals(productionDate))
                .toList();
        return seen.subList(Math.max(0, seen.size() - MEMORY), seen.size());
    }

    /** As planned, or called for where there is no plan yet. */
    private List<PlannedSoak> soaks(LocalDate day) {
        return office.plan(day)
                .map(DayPlan::soaks)
                .or(() -> office.ledger().soaks().find(day).map(call -> call.tubs()))
                .orElse(List.of());
    }

    /** Empty where the tub is in no plan any more, or was filled later than the look. */
    private Optional<SoakLook> look(Recorded one, List<PlannedSoak> soaks) {
        SoakSeen fact = (SoakSeen) one.fact();
        return soaks.stream()
                .filter(soak -> soak.tub().equals(fact.tub()) && soak.fillAt().isBefore(one.happenedAt()))
                .findFirst()
                .flatMap(soak -> tub(fact.tub())
                        .map(tub -> new SoakLook(
                                soak.soakGroup(), SoakObservation.of(soak, tub, one.happenedAt(), fact.ready()))));
    }

    private Optional<Tub> tub(String code) {
        return office.shop().floor().tubs().stream()
                .filter(tub -> tub.code().equals(code))
                .findFirst();
    }

    /** The plan with a line for each group that somebody looked at, and for each own tub that was last seen not ready. */
    DayPlan told(DayPlan plan) {
        LocalDate day = plan.heading().productionDate();
        List<String> lines = new ArrayList<>(of(day).sentences());
        Map<String, Recorded> last = new java.util.TreeMap<>();
        for (Recorded one : office.ledger().records().all(Fact.Kind.SOAK_SEEN))
            if (((SoakSeen) one.fact()).productionDate().equals(day)) last.put(((SoakSeen) one.fact()).tub(), one);
        last.forEach((tub, one) -> {
            if (!((SoakSeen) one.fact()).ready())
                lines.add("The beans in tub " + tub + " were not ready at "
                        + one.happenedAt()
                                .atZone(office.shop().house().zone())
                                .toLocalTime()
                                .truncatedTo(java.time.temporal.ChronoUnit.MINUTES)
                        + ": look again before grinding.");
        });
        return plan.withWarnings(lines);
    }
}
