package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** "Increase the half blocks on Monday to 24": the one day of a change of one product, put before it. */
final class DayOfChange {
    private DayOfChange() {}

    static List<Sense> first(List<Sense> senses) {
        long figures = count(senses, Kind.NUMBER);
        long products = count(senses, Kind.KIND, Kind.CODE);
        boolean whole = count(senses, Kind.SET_TO) == 1
                && count(senses, Kind.ON) == 1
                && count(senses, Kind.TO) == 1
                && figures == 1
                && products < 2
                && count(senses, Kind.COMMA, Kind.PARTED, Kind.OLD) == 0;
        int day = index(senses, Kind.ON);
        if (!whole || index(senses, Kind.SET_TO) > day || index(senses, Kind.TO) < day) return senses;
        List<Sense> moved = new ArrayList<>(senses);
        Sense on = moved.remove(day);
        moved.add(0, on);
        return moved;
    }

    private static long count(List<Sense> senses, Kind... kinds) {
        return senses.stream().filter(sense -> sense.is(kinds)).count();
    }

    private static int index(List<Sense> senses, Kind kind) {
        for (int i = 0; i < senses.size(); i++) if (senses.get(i).is(kind)) return i;
        return -1;
    }
}
