package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** A sentence of a line as its parts between commas, "and" and days; a day is a part of its own. */
record Sentence(String line, List<Sense> senses) {
    private static final Kind[] OF_ORDER = {Kind.NUMBER, Kind.KIND, Kind.FORM, Kind.CODE, Kind.CASE, Kind.SIZE};

    Sentence {
        senses = List.copyOf(senses);
    }

    /** @param joined whether no comma or the like stands between it and the part before */
    record Part(List<Sense> senses, boolean joined) {
        boolean isDay() {
            return senses.get(0).is(Kind.ON, Kind.ON_ASKED);
        }

        boolean has(Kind... kinds) {
            return senses.stream().anyMatch(sense -> sense.is(kinds));
        }

        boolean isOfOrder() {
            return has(OF_ORDER);
        }

        /** "10 half-litres" */
        boolean isSized() {
            List<Sense> own = senses.stream().filter(s -> !s.is(Kind.NOISE)).toList();
            return own.size() > 1 && own.get(0).is(Kind.NUMBER) && own.get(1).is(Kind.SIZE);
        }

        /** "6 firm only" can be a whole order. */
        boolean endsInOnly() {
            List<Kind> kinds = senses.stream().map(Sense::kind).toList();
            return kinds.indexOf(Kind.NUMBER) < kinds.indexOf(Kind.ONLY);
        }
    }

    String words() {
        return senses.isEmpty() ? "" : words(senses);
    }

    String words(List<Sense> some) {
        return line.substring(some.get(0).from(), some.get(some.size() - 1).until());
    }

    boolean has(Kind... kinds) {
        return senses.stream().anyMatch(sense -> sense.is(kinds));
    }

    /** The sentences of a line: they end at a full stop, not at the dot of an abbreviation. */
    static List<Sentence> in(String line, List<Sense> senses) {
        return SplitSentences.of(line, senses).stream()
                .map(own -> new Sentence(line, SpreadFigures.in(own)))
                .toList();
    }

    List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        List<Sense> now = new ArrayList<>();
        boolean joined = false;
        for (int i = 0; i < senses.size(); i++) {
            Sense sense = senses.get(i);
            boolean day = sense.is(Kind.ON, Kind.ON_ASKED);
            boolean mark = sense.is(Kind.COMMA, Kind.PARTED) || isHeadMark(i, now);
            if ((day || mark || sense.is(Kind.OLD)) && !now.isEmpty()) {
                parts.add(new Part(List.copyOf(now), joined));
                now.clear();
                joined = true;
            }
            if (day) parts.add(new Part(List.of(sense), joined));
            if (day) joined = true;
            else if (mark) joined = false;
            else now.add(sense);
        }
        if (!now.isEmpty()) parts.add(new Part(List.copyOf(now), joined));
        return JoinParts.of(parts);
    }

    /** A colon, or a dash between words, that ends what heads the rest: "Friday - 6 firm". */
    private boolean isHeadMark(int at, List<Sense> now) {
        boolean heads = !new Part(now, false).isOfOrder();
        if (senses.get(at).is(Kind.COLON)) return heads;
        boolean last = at + 1 == senses.size();
        return senses.get(at).is(Kind.DASH)
                && heads
                && at > 0
                && !last
                && !senses.get(at + 1).is(Kind.ON, Kind.ON_ASKED);
    }
}
