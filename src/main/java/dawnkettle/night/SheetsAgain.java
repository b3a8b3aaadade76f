package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.sheet.Sheet;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Prints all sheets of a plan in force once more, each marked at its foot as a second copy. */
public final class SheetsAgain {
    private final Office office;

    public SheetsAgain(Office office) {
        this.office = office;
    }

    /**
     * @param named the production day; the last that has a plan where none is named
     * @return what was done, in a sentence
     * @throws dawnkettle.trouble.BadFile where that day has no plan
     * @throws dawnkettle.trouble.DeviceAway where one did not come out, or perhaps; the others did
     */
    public String print(Optional<LocalDate> named) {
        DayPlan plan = plan(named);
        Heading heading = plan.heading();
        SheetEffects effects = new SheetEffects(office);
        List<Sheet> sheets = new PrintSheets(office, effects)
                .sheets(plan).stream()
                        .map(sheet -> sheet.markedSecondCopy(office.now().atZone(heading.zone())))
                        .toList();
        effects.print(
                ByHand.key(office.now() + " " + heading.productionDate() + " revision " + heading.revision()),
                heading.productionDate(),
                sheets);
        return sheets.size() + " sheets of " + heading.productionDate() + ", revision " + heading.revision()
                + ", are printed once more, marked at the foot";
    }

    private DayPlan plan(Optional<LocalDate> named) {
        List<LocalDate> days = office.ledger().plans().days();
        if (days.isEmpty())
            throw ByHand.refused("--day", "no day has a plan yet", "the close makes one; look with \"status\"");
        LocalDate last = days.get(days.size() - 1);
        return office.plan(named.orElse(last))
                .orElseThrow(() -> ByHand.refused(
                        "--day", "\"" + named.orElse(last) + "\" has no plan", "the last day that has one is " + last));
    }
}
