package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** "6 firm, no wait, make that 12 firm": the last of two entries of one product counts, where words between take back the first. */
final class TakeBack {
    private static final Kind[] OF_ENTRY = {
        Kind.KIND, Kind.FORM, Kind.CODE, Kind.SIZE, Kind.UNIT, Kind.GRADE, Kind.CASE, Kind.TIMES, Kind.DOZEN
    };
    private static final Kind[] BETWEEN = {
        Kind.FORGET, Kind.NO, Kind.SKIP, Kind.NOISE, Kind.COMMA, Kind.DASH, Kind.SET, Kind.STOP, Kind.BYE, Kind.HELLO
    };

    private TakeBack() {}

    static List<Sense> in(List<Sense> senses) {
        for (int i = 1; i < senses.size(); i++) {
            if (isActually(senses, i)) return in(replaced(senses, i));
            if (senses.get(i).is(Kind.FORGET)) {
                Optional<List<Sense>> without = without(senses, i);
                if (without.isPresent()) return in(without.get());
            }
        }
        return senses;
    }

    /** "2 buckets, actually 3,", "6 firm, actually make that 12," with no word behind the figure. */
    private static boolean isActually(List<Sense> senses, int at) {
        boolean before = at > 1
                && senses.get(at - 1).is(Kind.COMMA, Kind.DASH)
                && senses.get(at - 2).is(OF_ENTRY);
        int figure = figure(senses, at);
        boolean behind = figure < senses.size() && senses.get(figure).is(Kind.NUMBER);
        boolean ends =
                figure + 1 >= senses.size() || senses.get(figure + 1).is(Kind.COMMA, Kind.STOP, Kind.PARTED, Kind.DASH);
        return before && behind && ends && Asking.says(senses.get(at), "actually") && entry(senses, at - 2) >= 0;
    }

    private static int figure(List<Sense> senses, int at) {
        int figure = at + 1;
        while (figure < senses.size() && senses.get(figure).is(Kind.SET)) figure++;
        return figure;
    }

    /** Where the figure of the entry stands that ends there; below nought where it has none. */
    private static int entry(List<Sense> senses, int last) {
        int first = last;
        while (first >= 0
                && (senses.get(first).is(OF_ENTRY) || senses.get(first).is(Kind.NOISE))) first--;
        return first >= 0 && senses.get(first).is(Kind.NUMBER) ? first : -1;
    }

    private static List<Sense> replaced(List<Sense> senses, int at) {
        List<Sense> kept = new ArrayList<>(senses);
        int first = entry(senses, at - 2);
        int last = figure(senses, at);
        kept.set(first, senses.get(first).to(Kind.NUMBER, senses.get(last).value()));
        kept.subList(at - 1, last + 1).clear();
        return kept;
    }

    private static Optional<List<Sense>> without(List<Sense> senses, int forget) {
        int last = forget - 1;
        while (last >= 0 && senses.get(last).is(BETWEEN)) last--;
        int first = last;
        while (first >= 0
                && (senses.get(first).is(OF_ENTRY) || senses.get(first).is(Kind.NOISE))) first--;
        int next = forget + 1;
        while (next < senses.size() && senses.get(next).is(BETWEEN)) next++;
        int end = next + 1;
        while (end < senses.size()
                && (senses.get(end).is(OF_ENTRY) || senses.get(end).is(Kind.NOISE))) end++;
        boolean two = first >= 0
                && next < senses.size()
                && senses.get(first).is(Kind.NUMBER)
                && senses.get(next).is(Kind.NUMBER);
        if (!two || !isSame(senses.subList(first, last + 1), senses.subList(next, end))) return Optional.empty();
        List<Sense> kept = new ArrayList<>(senses.subList(0, first));
        kept.addAll(senses.subList(next, senses.size()));
        return Optional.of(kept);
    }

    private static boolean isSame(List<Sense> one, List<Sense> other) {
        return !named(one).isEmpty() && named(one).equals(named(other));
    }

    private static List<String> named(List<Sense> senses) {
        return senses.stream()
                .filter(sense -> sense.is(Kind.KIND, Kind.CODE, Kind.FORM, Kind.SIZE, Kind.GRADE))
                .map(sense -> sense.kind() + sense.value())
                .sorted()
                .toList();
    }
}
