package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** "6 medium 8 extra": a word for more that stands where another product would; the word list says which it can name. */
final class NamedByExtra {
    private NamedByExtra() {}

    static List<Sense> in(List<Sense> senses) {
        List<Sense> all = new ArrayList<>(senses);
        for (int i = 2; i < all.size(); i++) {
            Sense sense = all.get(i);
            boolean named = sense.is(Kind.MORE)
                    && !sense.value().isEmpty()
                    && !sense.value().equals("top");
            if (named && (isCounted(all, i) || isListed(all, i))) all.set(i, sense.to(Kind.KIND, sense.value()));
        }
        return all;
    }

    /** "6 medium 8 extra"; not "6 firm 8 extra", which may be 8 more of them. */
    private static boolean isCounted(List<Sense> senses, int at) {
        boolean figure = senses.get(at - 1).is(Kind.NUMBER);
        boolean ends = at + 1 == senses.size()
                || Asking.isPurpose(senses.get(at + 1))
                || senses.get(at + 1).is(Kind.COMMA, Kind.PARTED, Kind.STOP, Kind.NUMBER, Kind.ON, Kind.QUESTION_MARK);
        int before = at - 2;
        while (before >= 0 && senses.get(before).is(Kind.COMMA, Kind.PARTED, Kind.FORM, Kind.UNIT, Kind.SIZE)) before--;
        boolean other = before > 0
                && senses.get(before).is(Kind.KIND)
                && !senses.get(at).value().endsWith(senses.get(before).value())
                && senses.get(before - 1).is(Kind.NUMBER);
        return figure && ends && other;
    }

    /** "Firm 12 extra 8" */
    private static boolean isListed(List<Sense> senses, int at) {
        boolean figure = at + 1 < senses.size() && senses.get(at + 1).is(Kind.NUMBER);
        boolean ends = at + 2 >= senses.size() || !senses.get(at + 2).is(Kind.KIND, Kind.FORM, Kind.UNIT, Kind.CASE);
        return figure
                && ends
                && senses.get(at - 1).is(Kind.NUMBER)
                && senses.get(at - 2).is(Kind.KIND);
    }
}
