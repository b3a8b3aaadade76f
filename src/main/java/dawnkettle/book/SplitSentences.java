package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** Splits the senses of a line into sentences: at a full stop that is no dot of an abbreviation, and at an ellipsis that leads to no figure. */
final class SplitSentences {
    /** Letters of a word that a full stop may cut short (common practice, no source). */
    private static final int SHORT = 5;

    private static final Kind[] OF_PRODUCT = {Kind.KIND, Kind.FORM, Kind.CODE, Kind.SIZE, Kind.UNIT, Kind.CASE};

    private static final Kind[] ALTERS = {
        Kind.NO, Kind.OLD, Kind.DROP, Kind.FORGET, Kind.UNSURE, Kind.ON, Kind.ON_ASKED, Kind.SET, Kind.SET_TO, Kind.ONLY
    };

    private final String line;
    private final List<Sense> senses;
    private final List<List<Sense>> all = new ArrayList<>();
    private List<Sense> now = new ArrayList<>();

    private SplitSentences(String line, List<Sense> senses) {
        this.line = line;
        this.senses = senses;
    }

    static List<List<Sense>> of(String line, List<Sense> senses) {
        List<List<Sense>> asides = new ArrayList<>();
        SplitSentences split = new SplitSentences(line, withoutAsides(senses, asides));
        for (int i = 0; i < split.senses.size(); i++) split.take(i);
        split.end();
        split.all.addAll(asides);
        return split.all;
    }

    /** "(please check the dates, the last were short)" says something of its own, and is read behind the rest. */
    private static List<Sense> withoutAsides(List<Sense> senses, List<List<Sense>> asides) {
        List<Sense> kept = new ArrayList<>();
        for (int i = 0; i < senses.size(); i++) {
            int end = i + 1;
            while (senses.get(i).is(Kind.BRACKET)
                    && end < senses.size()
                    && !senses.get(end).is(Kind.BRACKET)) end++;
            boolean whole = end > i + 1 && end < senses.size();
            List<Sense> within = whole ? senses.subList(i + 1, end) : List.of();
            boolean strange = within.stream().anyMatch(sense -> sense.is(Kind.UNKNOWN, Kind.PAST));
            boolean alters = within.stream().anyMatch(sense -> sense.is(ALTERS));
            if (strange && !alters && within.size() > 2 && !kept.isEmpty()) {
                asides.add(List.copyOf(within));
                i = end;
            } else kept.add(senses.get(i));
        }
        return kept;
    }

    private void end() {
        if (!now.isEmpty()) all.add(List.copyOf(now));
        now = new ArrayList<>();
    }

    private void take(int at) {
        Sense sense = senses.get(at);
        boolean ends = sense.is(Kind.QUESTION_MARK)
                || isParted(at)
                || sense.is(Kind.STOP) && stops(at)
                || sense.is(Kind.DASH) && breaksOff(at);
        boolean dot = sense.is(Kind.STOP) && isShort(at);
        if (!ends && !dot) now.add(stopped(sense));
        if (!ends || now.isEmpty()) return;
        if (sense.is(Kind.QUESTION_MARK)) now.add(sense);
        end();
    }

    /** "6 firm; for Saturday 8" */
    private boolean isParted(int at) {
        return senses.get(at).is(Kind.PARTED)
                && line.charAt(senses.get(at).from()) == ';'
                && now.stream().anyMatch(sense -> sense.is(Kind.NUMBER, Kind.A, Kind.DROP, Kind.NO));
    }

    private Sense stopped(Sense sense) {
        boolean apart = sense.until() < line.length() && Character.isWhitespace(line.charAt(sense.until()));
        return sense.is(Kind.STOP) ? sense.to(apart ? Kind.COMMA : Kind.NOISE, "") : sense;
    }

    private boolean stops(int at) {
        Sense stop = senses.get(at);
        if (line.charAt(stop.from()) == '!' || at + 1 == senses.size()) return true;
        return Character.isWhitespace(line.charAt(stop.until())) && !isShort(at);
    }

    /** "cs.", "Thur. 6 firm", "6 med. blocks"; not the last word of an order ("6 firm fri. 8 medium sat"). */
    private boolean isShort(int at) {
        if (at == 0) return false;
        Sense before = senses.get(at - 1);
        boolean written = before.until() - before.from() <= SHORT
                && before.until() == senses.get(at).from();
        if (!written || line.charAt(senses.get(at).from()) != '.') return false;
        boolean anew = at + 1 < senses.size()
                && Character.isUpperCase(line.charAt(senses.get(at + 1).from()));
        if (anew && before.is(Kind.KIND, Kind.ON, Kind.ON_ASKED, Kind.SIZE)) return false;
        boolean whole = now.stream().anyMatch(sense -> sense.is(Kind.NUMBER, Kind.A));
        if (before.is(Kind.ON, Kind.ON_ASKED)) return !whole;
        if (before.is(Kind.KIND))
            return !whole || at + 1 < senses.size() && senses.get(at + 1).is(OF_PRODUCT);
        return before.is(Kind.CASE, Kind.UNIT, Kind.MEASURE, Kind.SIZE);
    }

    /** "6 sesame... wed"; not "sesame ..... 6". */
    private boolean breaksOff(int at) {
        String mark = line.substring(senses.get(at).from(), senses.get(at).until());
        if (!mark.matches("\\.{2,}|…") || now.isEmpty()) return false;
        boolean leads = at + 1 < senses.size() && senses.get(at + 1).is(Kind.NUMBER, Kind.A, Kind.DOZEN);
        boolean sized = now.size() == 2
                && now.get(0).is(Kind.KIND, Kind.FORM)
                && now.get(1).is(Kind.NUMBER);
        return !(leads && (sized || now.get(now.size() - 1).is(OF_PRODUCT)));
    }
}
