package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** One figure for several products, or one product for several days: written out as an entry each. */
final class SpreadFigures {
    private static final Kind[] OF_PRODUCT = {Kind.KIND, Kind.FORM, Kind.CODE, Kind.SIZE, Kind.UNIT, Kind.GRADE};
    private static final Kind[] OF_PACK = {Kind.CASE, Kind.FORM, Kind.UNIT, Kind.SIZE, Kind.GRADE};
    private static final Kind[] APART = {Kind.COMMA, Kind.PARTED};
    private static final Kind[] BESIDE = {Kind.NOISE, Kind.BRACKET, Kind.COLON, Kind.COMMA, Kind.PARTED, Kind.DASH};

    private SpreadFigures() {}

    static List<Sense> in(List<Sense> said) {
        List<Sense> senses = DayOfChange.first(NamedByExtra.in(said));
        for (int i = 0; i < senses.size(); i++) if (senses.get(i).is(Kind.EACH)) return each(senses, i);
        return days(senses);
    }

    /** "Six each of firm, medium and sesame", "firm and medium, 6 each" */
    private static List<Sense> each(List<Sense> senses, int at) {
        if (isDays(senses, at + 1))
            return joined(senses.subList(0, at), List.of(), senses.subList(at + 1, senses.size()));
        int from = at - 1;
        while (from >= 0 && senses.get(from).is(OF_PACK)) from--;
        if (from < 0 || !senses.get(from).is(Kind.NUMBER)) return senses;
        List<Sense> figure = senses.subList(from, at);
        List<List<Sense>> behind = groups(senses.subList(at + 1, senses.size()));
        if (behind.size() > 1) {
            int end = end(senses, behind);
            return joined(senses.subList(0, from), written(figure, behind), senses.subList(end, senses.size()));
        }
        int start = start(senses, from);
        List<List<Sense>> before = groups(senses.subList(start, from));
        if (before.size() < 2 || !behind.isEmpty()) return senses;
        return joined(senses.subList(0, start), written(figure, before), senses.subList(at + 1, senses.size()));
    }

    /** "Each on Wednesday and Friday" */
    private static boolean isDays(List<Sense> senses, int from) {
        List<Sense> behind = senses.subList(from, senses.size());
        boolean only = behind.stream().allMatch(s -> s.is(BESIDE) || s.is(Kind.ON, Kind.ON_ASKED, Kind.BYE));
        return only && behind.stream().filter(s -> s.is(Kind.ON)).count() > 1;
    }

    /** "Thursday and Friday 2 trays each" */
    private static boolean isOfDays(List<Sense> senses, int at) {
        boolean ends = senses.subList(at + 1, senses.size()).stream().allMatch(s -> s.is(BESIDE) || s.is(Kind.BYE));
        List<Sense> before = senses.subList(0, at);
        long figures = before.stream().filter(s -> s.is(Kind.NUMBER, Kind.A)).count();
        return ends
                && figures == 1
                && before.stream().filter(s -> s.is(Kind.ON)).count() > 1;
    }

    private static int end(List<Sense> senses, List<List<Sense>> groups) {
        List<Sense> last = groups.get(groups.size() - 1);
        return senses.indexOf(last.get(last.size() - 1)) + 1;
    }

    /** Where the products before a figure begin. */
    private static int start(List<Sense> senses, int until) {
        int start = until;
        int at = until - 1;
        while (at >= 0
                && (senses.get(at).is(OF_PRODUCT)
                        || senses.get(at).is(BESIDE) && !senses.get(at).is(Kind.COLON))) {
            if (senses.get(at).is(OF_PRODUCT)) start = at;
            at--;
        }
        return start;
    }

    /** Products that stand beside each other with no figure among them; none where one has no kind. */
    private static List<List<Sense>> groups(List<Sense> senses) {
        List<List<Sense>> groups = new ArrayList<>();
        List<Sense> now = new ArrayList<>();
        for (Sense sense : senses) {
            boolean apart = sense.is(APART);
            if (sense.is(OF_PRODUCT)) now.add(sense);
            else if (apart && !now.isEmpty()) {
                groups.add(now);
                now = new ArrayList<>();
            } else if (!apart && !(now.isEmpty() && sense.is(Kind.NOISE, Kind.COLON))) break;
        }
        if (!now.isEmpty()) groups.add(now);
        boolean named = groups.stream().allMatch(group -> group.stream().anyMatch(s -> s.is(Kind.KIND, Kind.CODE)));
        return named ? groups : List.of();
    }

    private static List<Sense> written(List<Sense> figure, List<List<Sense>> groups) {
        List<Sense> all = new ArrayList<>();
        for (List<Sense> group : groups) {
            int from = group.get(0).from();
            if (!all.isEmpty()) all.add(new Sense(Kind.COMMA, "", from, from));
            figure.forEach(sense -> all.add(new Sense(sense.kind(), sense.value(), from, from)));
            all.addAll(group);
        }
        return all;
    }

    private static List<Sense> joined(List<Sense> before, List<Sense> between, List<Sense> behind) {
        List<Sense> all = new ArrayList<>(before);
        all.addAll(between);
        all.addAll(behind);
        return all;
    }

    /** "4 trays of pouches tomorrow, 4 Friday, 6 Saturday": figures and days take turns, and one product stands there. */
    private static List<Sense> days(List<Sense> senses) {
        List<Sense> turns = senses.stream()
                .filter(s -> s.is(Kind.NUMBER, Kind.A, Kind.ON, Kind.ON_ASKED))
                .toList();
        long figures = turns.stream().filter(s -> s.is(Kind.NUMBER, Kind.A)).count();
        List<Sense> product = product(senses);
        if (figures < 2 || 2 * figures != turns.size() || product.isEmpty()) return senses;
        List<Sense> all = new ArrayList<>();
        boolean daysFirst = turns.get(0).is(Kind.ON, Kind.ON_ASKED);
        boolean cases = false;
        for (int i = 0; i < turns.size(); i += 2) {
            Sense day = turns.get(daysFirst ? i : i + 1);
            Sense figure = turns.get(daysFirst ? i + 1 : i);
            boolean inCases = senses.indexOf(figure) + 1 < senses.size()
                    && senses.get(senses.indexOf(figure) + 1).is(Kind.CASE);
            boolean turn = day.is(Kind.ON, Kind.ON_ASKED) && figure.is(Kind.NUMBER, Kind.A);
            if (!turn || i > 0 && inCases != cases) return senses;
            cases = inCases;
            entry(all, day, figure, product, inCases);
        }
        return all;
    }

    private static void entry(List<Sense> all, Sense day, Sense figure, List<Sense> product, boolean inCases) {
        int at = figure.until();
        all.add(day);
        all.add(figure.to(Kind.NUMBER, figure.is(Kind.A) ? "1" : figure.value()));
        if (inCases) all.add(new Sense(Kind.CASE, "", at, at));
        product.forEach(sense -> all.add(new Sense(sense.kind(), sense.value(), at, at)));
        all.add(new Sense(Kind.COMMA, "", at, at));
    }

    /** The one product of a sentence of which every other word is a figure, a day or says nothing. */
    private static List<Sense> product(List<Sense> senses) {
        List<Sense> product = new ArrayList<>();
        int last = -1;
        for (int i = 0; i < senses.size(); i++) {
            Sense sense = senses.get(i);
            if (sense.is(OF_PRODUCT)) {
                if (last >= 0 && last != i - 1 && !senses.get(i - 1).is(Kind.NOISE)) return List.of();
                product.add(sense);
                last = i;
            } else if (!sense.is(BESIDE) && !sense.is(Kind.NUMBER, Kind.A, Kind.ON, Kind.ON_ASKED, Kind.CASE, Kind.BYE))
                return List.of();
        }
        long named = product.stream().filter(s -> s.is(Kind.KIND, Kind.CODE)).count();
        boolean formed = product.stream().anyMatch(s -> s.is(Kind.FORM));
        return named == 1 || named == 0 && formed ? product : List.of();
    }
}
