package dawnkettle.night;

import dawnkettle.sheet.SheetStyle;
import dawnkettle.sheet.SheetStyle.Dating;
import dawnkettle.store.Effect;
import java.time.LocalDate;
import java.util.List;

/** How the sheets of a day are dated: for sure, while the clock is in doubt, or for sure again after such sheets. */
record SheetDate(Dating dating) {
    /** Stands behind the name of a set of sheets that came out while the clock was in doubt. */
    private static final String MARK = ", date not confirmed";

    static SheetDate of(Office office, LocalDate day) {
        if (!new ClockGate(office).isTrusted()) return new SheetDate(Dating.NOT_CONFIRMED);
        boolean isHanging = office.ledger().effects().of(day).stream()
                .anyMatch(effect -> effect.key().contains(MARK)
                        && effect.state() != Effect.State.INTENDED
                        && effect.state() != Effect.State.FAILED);
        return new SheetDate(isHanging ? Dating.CONFIRMED_SINCE : Dating.SURE);
    }

    boolean isInDoubt() {
        return dating == Dating.NOT_CONFIRMED;
    }

    /** By which the ledger knows a set of sheets; those in doubt are a set of their own. */
    String set(String set) {
        return isInDoubt() ? inDoubt(set) : set;
    }

    static String inDoubt(String set) {
        return set + MARK;
    }

    /** Whether a sheet, as the ledger knows it, came out or was to while the clock was in doubt. */
    static boolean isInDoubt(Effect effect) {
        return effect.key().contains(MARK);
    }

    /** Names of the sheets of a set that were to come out while the clock was in doubt. */
    static List<String> named(List<Effect> effects, String set) {
        String start = SheetEffects.key(inDoubt(set), "");
        return effects.stream()
                .map(Effect::key)
                .filter(key -> key.startsWith(start))
                .map(key -> key.substring(start.length()))
                .toList();
    }

    SheetStyle style(SheetStyle plain) {
        return plain.dated(dating);
    }
}
