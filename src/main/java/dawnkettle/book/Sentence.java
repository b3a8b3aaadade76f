package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** A sentence of a line as its parts between commas, "and" and days; a day is a part of its own. */
record Sentence(String line, List<Sense> senses) {
    private static final int SHORT = 5;
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
        List<Sentence> all = new ArrayList<>();
        List<Sense> now = new ArrayList<>();
        for (int i = 0; i < senses.size(); i++) {
            Sense sense = senses.get(i);
            boolean ends = sense.is(Kind.QUESTION_MARK) || sense.is(Kind.STOP) && ends(line, senses, i);
            if (!ends && !(sense.is(Kind.STOP) && isShort(senses, i))) now.add(stopped(line, sense));
            if (ends && !now.isEmpty()) {
                if (sense.is(Kind.QUESTION_MARK)) now.add(sense);
                all.add(new Sentence(line, now));
                now = new ArrayList<>();
            }
        }
        if (!now.isEmpty()) all.add(new Sentence(line, now));
        return all;
    }

    private static Sense stopped(String line, Sense sense) {
        boolean apart = sense.until() < line.length() && Character.isWhitespace(line.charAt(sense.until()));
        return sense.is(Kind.STOP) ? sense.to(apart ? Kind.COMMA : Kind.NOISE, "") : sense;
    }

    /** "cs." */
    private static boolean isShort(List<Sense> senses, int at) {
        if (at == 0) return false;
        Sense before = senses.get(at - 1);
        return before.is(Kind.CASE, Kind.UNIT, Kind.ON, Kind.ON_ASKED, Kind.MEASURE, Kind.SIZE, Kind.KIND)
                && before.until() - before.from() <= SHORT;
    }

    private static boolean ends(String line, List<Sense> senses, int at) {
        Sense stop = senses.get(at);
        if (line.charAt(stop.from()) == '!' || at + 1 == senses.size()) return true;
        boolean apart = Character.isWhitespace(line.charAt(stop.until()));
        return apart
                && !isShort(senses, at)
                && Character.isUpperCase(line.charAt(senses.get(at + 1).from()));
    }

    List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        List<Sense> now = new ArrayList<>();
        boolean joined = false;
        for (Sense sense : senses) {
            boolean day = sense.is(Kind.ON, Kind.ON_ASKED);
            boolean mark =
                    sense.is(Kind.COMMA, Kind.PARTED) || sense.is(Kind.COLON) && !new Part(now, false).isOfOrder();
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
        return isEntry(parts) ? List.of(new Part(joined(parts), false)) : parts;
    }

    /** "Half blocks, 12" */
    private static boolean isEntry(List<Part> parts) {
        return parts.size() == 2
                && parts.get(0).has(Kind.KIND, Kind.FORM, Kind.CODE)
                && !parts.get(0).has(Kind.NUMBER, Kind.A)
                && parts.get(1).senses().get(0).is(Kind.NUMBER)
                && !parts.get(1).has(Kind.KIND, Kind.FORM, Kind.CODE);
    }

    private static List<Sense> joined(List<Part> parts) {
        List<Sense> all = new ArrayList<>();
        parts.forEach(part -> all.addAll(part.senses()));
        return all;
    }
}
