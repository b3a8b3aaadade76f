package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;

/** A sentence of a line as its parts between commas, "and" and days; a day is a part of its own. */
record Sentence(String line, List<Sense> senses) {
    /** Letters of a word that a full stop may cut short (common practice, no source). */
    private static final int SHORT = 5;

    private static final Kind[] OF_ORDER = {Kind.NUMBER, Kind.KIND, Kind.FORM, Kind.CODE, Kind.CASE, Kind.SIZE};

    private static final Kind[] OF_SIZE = {
        Kind.SIZE, Kind.NOISE, Kind.UNIT, Kind.BRACKET, Kind.DASH, Kind.QUESTION_MARK, Kind.BY
    };
    private static final Kind[] STRANGE = {
        Kind.UNKNOWN, Kind.UNSURE, Kind.VAGUE, Kind.PAST, Kind.OLD, Kind.DROP, Kind.NO
    };

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

        private boolean goesOnIn(Part next) {
            boolean named = has(Kind.KIND, Kind.CODE) && !has(STRANGE);
            boolean nextNamed = next.has(Kind.KIND, Kind.FORM, Kind.CODE);
            boolean open = !has(Kind.NUMBER, Kind.A) && next.begins(Kind.NUMBER, Kind.SIZE, Kind.A);
            boolean size = next.senses().stream().allMatch(s -> s.is(OF_SIZE)) && next.has(Kind.SIZE);
            return (named || has(Kind.FORM) && open) && !nextNamed && !next.has(STRANGE) && (open || size);
        }

        private boolean begins(Kind... kinds) {
            return senses.get(0).is(kinds);
        }

        private Part with(Part next) {
            List<Sense> both = new ArrayList<>(senses);
            both.addAll(next.senses());
            return new Part(List.copyOf(both), joined);
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
            if (!ends && !(sense.is(Kind.STOP) && isShort(line, senses, i))) now.add(stopped(line, sense));
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
    private static boolean isShort(String line, List<Sense> senses, int at) {
        if (at == 0) return false;
        Sense before = senses.get(at - 1);
        boolean anew = at + 1 < senses.size()
                && Character.isUpperCase(line.charAt(senses.get(at + 1).from()));
        if (anew && before.is(Kind.KIND, Kind.ON, Kind.ON_ASKED, Kind.SIZE)) return false;
        return before.is(Kind.CASE, Kind.UNIT, Kind.ON, Kind.ON_ASKED, Kind.MEASURE, Kind.SIZE, Kind.KIND)
                && before.until() - before.from() <= SHORT;
    }

    private static boolean ends(String line, List<Sense> senses, int at) {
        Sense stop = senses.get(at);
        if (line.charAt(stop.from()) == '!' || at + 1 == senses.size()) return true;
        boolean apart = Character.isWhitespace(line.charAt(stop.until()));
        return apart
                && !isShort(line, senses, at)
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
        return joined(parts);
    }

    /** A comma stands within an entry: "Half blocks, 12", "firm, 400 g, 12", "12 firm, 400 g". */
    private static List<Part> joined(List<Part> parts) {
        List<Part> all = new ArrayList<>();
        for (Part part : parts) {
            Part before = all.isEmpty() ? part : all.get(all.size() - 1);
            boolean goesOn = before != part && !before.isDay() && !part.isDay() && before.goesOnIn(part);
            if (goesOn) all.set(all.size() - 1, before.with(part));
            else all.add(part);
        }
        return all;
    }
}
