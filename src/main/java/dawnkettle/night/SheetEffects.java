package dawnkettle.night;

import dawnkettle.sheet.Sheet;
import dawnkettle.store.Effect;
import dawnkettle.trouble.DeviceAway;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Prints sheets, each once: an intent first, then what became of it. What may have come out is printed again at most once. */
final class SheetEffects {
    /** A sheet that may have come out goes out once more, and then no more. */
    private static final int MOST_TRIES = 2;

    private final Office office;
    /** Given to the printer, and the ledger has not taken what became of them. */
    private final Set<String> unnoted = new HashSet<>();

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
        if (before.state() == Effect.State.SENDING && unnoted.contains(key))
            office.ledger().effects().ambiguous(key, office.now(), "what became of it could not be noted");
        int inDoubt = before.attempts() == 0 ? 0 : office.ledger().effects().timesInDoubt(key);
        if (before.state() == Effect.State.AMBIGUOUS && inDoubt >= MOST_TRIES) return;
        if (!office.ledger().effects().sending(key, office.now())) return;
        unnoted.add(key);
        send(key, isUnknown || inDoubt > 0 ? sheet.markedMaybePrinted() : sheet);
        office.ledger().effects().done(key, office.now(), "");
        unnoted.remove(key);
    }

    private void send(String key, Sheet sheet) {
        try {
            office.edges().paper().printer().print(sheet);
        } catch (DeviceAway away) {
            if (away.isAmbiguous()) office.ledger().effects().ambiguous(key, office.now(), away.getMessage());
            else office.ledger().effects().failed(key, office.now(), away.getMessage());
            unnoted.remove(key);
            throw away;
        }
    }
}
