package dawnkettle.night;

import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What stands in for a soak call that no planner gives: the tubs of the same weekday a week ago, or of the weeks before. */
final class LastCall {
    private static final String AS_BEFORE = "The planner did not come to an end: these are the tubs of ";

    /** Looked back for a call of the same weekday; older ones are of another season (common practice, no source). */
    private static final int WEEKS = 4;

    private final Office office;

    LastCall(Office office) {
        this.office = office;
    }

    static boolean isOne(SoakCall call) {
        return !call.notes().isEmpty() && call.notes().get(0).startsWith(AS_BEFORE);
    }

    /** Empty where there was none in four weeks: nobody guesses how many beans to soak. */
    Optional<SoakCall> of(LocalDate productionDate) {
        for (int weeks = 1; weeks <= WEEKS; weeks++) {
            int back = weeks;
            LocalDate then = productionDate.minusWeeks(back);
            Optional<SoakCall> call = office.ledger()
                    .soaks()
                    .find(then)
                    .filter(one -> !one.isEmpty() && !isOne(one))
                    .map(one -> again(one, back));
            if (call.isPresent()) return call;
        }
        return Optional.empty();
    }

    private SoakCall again(SoakCall then, int weeks) {
        SoakCall call = new SoakCall(
                then.productionDate().plusWeeks(weeks),
                office.now(),
                then.tubs().stream().map(tub -> again(tub, weeks)).toList(),
                then.groups(),
                List.of());
        return noted(
                call,
                AS_BEFORE + then.productionDate()
                        + ". Is the room as warm as it was then? Look at the beans before grinding, and write down their lot.");
    }

    /** At the same hour of the wall's clock; which beans lie there now is written down by hand. */
    private PlannedSoak again(PlannedSoak tub, int weeks) {
        return new PlannedSoak(
                tub.tub(),
                tub.soakGroup(),
                tub.beans(),
                List.of(),
                tub.water(),
                tub.waterTemperature(),
                tub.room(),
                tub.source(),
                later(tub.fillAt(), weeks),
                later(tub.readyAt(), weeks),
                later(tub.latestGrindAt(), weeks),
                tub.equivalentMinutes(),
                tub.leftOver(),
                List.of(),
                Optional.empty(),
                List.of());
    }

    private Instant later(Instant at, int weeks) {
        ZoneId zone = office.shop().house().zone();
        return at.atZone(zone).plusWeeks(weeks).toInstant();
    }

    /** The same call with a note that is read first. */
    SoakCall noted(SoakCall call, String note) {
        List<String> notes = new ArrayList<>(List.of(note));
        notes.addAll(call.notes());
        return new SoakCall(call.productionDate(), call.decidedAt(), call.tubs(), call.groups(), notes);
    }
}
