package dawnkettle.night;

import dawnkettle.sheet.Sheet;
import dawnkettle.store.Effect;
import dawnkettle.trouble.DeviceAway;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Prints sheets, each once: an intent first, then what became of it. What may have come out is printed again at most once. */
final class SheetEffects {
    /** A sheet that may have come out goes out once more, and then no more. */
    private static final int MOST_TRIES = 2;

    private final Office office;

    SheetEffects(Office office) {
        this.office = office;
    }

    /**
     * @param set which plan or call the sheets belong to: a sheet of one name is printed once in each set
     * @throws DeviceAway where one could not be printed; the others were
     */
    void print(String set, LocalDate businessDate, List<Sheet> sheets) {
        List<DeviceAway> away = new ArrayList<>();
        for (Sheet sheet : sheets) {
            try {
                print(key(set, sheet.name()), businessDate, sheet);
            } catch (DeviceAway one) {
                away.add(one);
            }
        }
        if (!away.isEmpty()) throw away.get(0);
    }

    /** By which the ledger knows a sheet of a set. */
    static String key(String set, String sheet) {
        return "sheet " + set + " " + sheet;
    }

    private void print(String key, LocalDate businessDate, Sheet sheet) {
        Effect before = office.ledger().effects().intend(key, Effect.Kind.SHEET, businessDate, office.now());
        boolean isUnknown =
                before.state() == Effect.State.INTENDED && new AfterRestore(office).mayHaveSheet(businessDate);
        boolean maybeOut = before.state() == Effect.State.AMBIGUOUS || isUnknown;
        if (maybeOut && before.attempts() >= MOST_TRIES) return;
        if (!office.ledger().effects().sending(key, office.now())) return;
        try {
            office.edges().paper().printer().print(maybeOut ? sheet.markedMaybePrinted() : sheet);
            office.ledger().effects().done(key, office.now(), "");
        } catch (DeviceAway away) {
            if (away.isAmbiguous()) office.ledger().effects().ambiguous(key, office.now(), away.getMessage());
            else office.ledger().effects().failed(key, office.now(), away.getMessage());
            throw away;
        }
    }
}
