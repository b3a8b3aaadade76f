package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What words that we do not know do to the part of a sentence that they stand in.
 *
 * <p>In the place of a product ("15 puchoes", "puchoes 15") they make that entry uncertain. Before words that ask for
 * something ("the kitchen is full, so we would like 6 firm") and behind a "for" they are an aside. Anywhere else beside an
 * order they may say what it is about ("you sent 6 firm").
 */
final class Leftover {
    /** A part with one of them is never a wish. */
    static final Kind[] STRANGE = {
        Kind.UNKNOWN,
        Kind.UNSURE,
        Kind.PAST,
        Kind.REASON,
        Kind.EACH,
        Kind.VAGUE,
        Kind.MONTH,
        Kind.ORDINAL,
        Kind.DATE,
        Kind.MEASURE,
        Kind.LAST,
        Kind.NEXT,
        Kind.THIS,
        Kind.LAST_WEEK,
        Kind.NEXT_WEEK,
        Kind.AND_HALF,
        Kind.WEEKDAY,
        Kind.DAY,
        Kind.FORGET,
        Kind.CASE_AND_HALF
    };

    /** Words of a name, first and last (common practice, no source). */
    private static final int MOST_OF_A_NAME = 2;

    private static final Kind[] BETWEEN = {Kind.NOISE, Kind.BRACKET, Kind.DASH};
    private static final Kind[] OF_PACK = {
        Kind.TIMES, Kind.CASE, Kind.FORM, Kind.UNIT, Kind.SIZE, Kind.COLON, Kind.GRADE
    };
    private static final Kind[] TURNS = {
        Kind.NUMBER, Kind.KIND, Kind.CODE, Kind.UNSURE, Kind.NO, Kind.OLD, Kind.DROP, Kind.SET, Kind.SET_TO,
        Kind.ONLY, Kind.SAME, Kind.SAME_AS, Kind.DOUBLE, Kind.PAST, Kind.LAST, Kind.LAST_WEEK, Kind.MORE, Kind.CASE
    };

    /** What an order is made of, and what is to be done. */
    private static final Kind[] CORE = {
        Kind.NUMBER,
        Kind.KIND,
        Kind.FORM,
        Kind.CODE,
        Kind.CASE,
        Kind.SIZE,
        Kind.GRADE,
        Kind.UNIT,
        Kind.SET,
        Kind.SET_TO,
        Kind.ONLY,
        Kind.OLD,
        Kind.DROP,
        Kind.NO,
        Kind.SKIP,
        Kind.SAME,
        Kind.SAME_AS,
        Kind.DOUBLE,
        Kind.MORE,
        Kind.TIMES
    };

    /** With one of them words beside an order are no aside. */
    static final Kind[] RISKY = {
        Kind.UNSURE,
        Kind.VAGUE,
        Kind.PAST,
        Kind.LAST,
        Kind.LAST_WEEK,
        Kind.NEXT_WEEK,
        Kind.NEXT,
        Kind.FORGET,
        Kind.EACH,
        Kind.QUESTION_MARK,
        Kind.BY,
        Kind.MEASURE,
        Kind.DATE
    };

    private final Sentence sentence;
    private final boolean skips;

    Leftover(Sentence sentence) {
        this.sentence = sentence;
        this.skips = sentence.has(Kind.SKIP) && !sentence.has(TURNS);
    }

    /** A part without the asides at its ends. */
    record Trimmed(Optional<Part> before, Part core, Optional<Part> after) {}

    /** @param beforeDay whether a day follows, which what stands before it may be about: "for the first" Friday */
    Trimmed trimmed(Part part, boolean beforeDay) {
        List<Sense> senses = part.senses();
        int from = first(senses);
        int until = last(senses) + 1;
        boolean plain = until <= 0 || from >= until || !part.has(Kind.UNKNOWN, Kind.REASON, Kind.ORDINAL, Kind.THIS);
        if (plain) return new Trimmed(Optional.empty(), part, Optional.empty());
        int lead = lead(senses.subList(0, from));
        int tail = beforeDay ? senses.size() : until + tail(senses.subList(until, senses.size()));
        return new Trimmed(
                piece(part, 0, lead),
                new Part(List.copyOf(senses.subList(lead, tail)), part.joined()),
                piece(part, tail, senses.size()));
    }

    List<Trimmed> trimmed(List<Part> parts) {
        List<Trimmed> all = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            boolean beforeDay = i + 1 < parts.size()
                    && parts.get(i + 1).isDay()
                    && parts.get(i + 1).joined();
            all.add(trimmed(parts.get(i), beforeDay));
        }
        return all;
    }

    private static Optional<Part> piece(Part part, int from, int until) {
        return from >= until
                ? Optional.empty()
                : Optional.of(new Part(List.copyOf(part.senses().subList(from, until)), part.joined()));
    }

    private static int first(List<Sense> senses) {
        int at = 0;
        while (at < senses.size() && !isCore(senses, at)) at++;
        return at;
    }

    private static int last(List<Sense> senses) {
        int at = senses.size() - 1;
        while (at >= 0 && !isCore(senses, at)) at--;
        return at;
    }

    private static boolean isCore(List<Sense> senses, int at) {
        boolean one = senses.get(at).is(Kind.A, Kind.HALF_CASE)
                && at + 1 < senses.size()
                && senses.get(at + 1).is(CORE);
        return senses.get(at).is(CORE) || one;
    }

    /** Where the words begin that ask for what follows: behind the last word we do not know. */
    private static int lead(List<Sense> lead) {
        int strange = lead.size() - 1;
        while (strange >= 0 && !lead.get(strange).is(STRANGE)) strange--;
        boolean asks = Asking.in(lead, false);
        boolean risky = lead.stream().anyMatch(sense -> sense.is(RISKY));
        return strange >= 0 && asks && !risky ? strange + 1 : 0;
    }

    /** How many senses of a tail belong to the order: none of "for the parish fair" does. */
    private static int tail(List<Sense> tail) {
        boolean strange = tail.stream().anyMatch(sense -> sense.is(STRANGE));
        boolean risky = tail.stream().anyMatch(sense -> sense.is(RISKY));
        if (!strange || risky) return tail.size();
        Sense begins = tail.get(0);
        boolean aside = begins.is(Kind.REASON, Kind.BYE, Kind.HELLO) || Asking.is(begins) || Asking.isPurpose(begins);
        return aside ? 0 : tail.size();
    }

    static boolean isRisky(Part part) {
        return part.has(RISKY);
    }

    /** "15 puchoes", "puchoes 15" */
    static boolean isEntry(Part part) {
        List<Sense> senses = part.senses().stream().filter(s -> !s.is(BETWEEN)).toList();
        if (senses.isEmpty()) return false;
        if (senses.get(0).is(Kind.NUMBER, Kind.A)) return isStrange(senses, 1, Kind.KIND);
        int strange = strange(senses, 0);
        int at = strange;
        while (at < senses.size() && senses.get(at).is(OF_PACK)) at++;
        boolean counted = at < senses.size() && senses.get(at).is(Kind.NUMBER);
        if (strange == 0 || !counted) return false;
        return senses.subList(at + 1, senses.size()).stream().allMatch(s -> s.is(OF_PACK));
    }

    private static boolean isStrange(List<Sense> senses, int from, Kind alsoBehind) {
        int at = from;
        while (at < senses.size() && senses.get(at).is(OF_PACK)) at++;
        int strange = strange(senses, at);
        return strange > 0
                && senses.subList(at + strange, senses.size()).stream()
                        .allMatch(s -> s.is(OF_PACK) || s.is(alsoBehind));
    }

    /** How many words we do not know stand there, one or two; none where there are more. */
    private static int strange(List<Sense> senses, int from) {
        int at = from;
        while (at < senses.size() && senses.get(at).is(Kind.UNKNOWN)) at++;
        return at - from <= MOST_OF_A_NAME ? at - from : 0;
    }

    /** "Because the kitchen is being painted"; where nothing is wanted at all it needs no "because". */
    boolean isReason(Part part) {
        boolean nothing = skips && part.has(Kind.UNKNOWN);
        boolean said = part.has(Kind.REASON) || nothing;
        return said && !part.has(TURNS) && !part.has(Kind.SKIP);
    }

    boolean isName(Part part) {
        List<Sense> senses = part.senses();
        long unknown = senses.stream().filter(s -> s.is(Kind.UNKNOWN)).count();
        return unknown <= MOST_OF_A_NAME
                && senses.stream()
                        .allMatch(s -> s.is(BETWEEN)
                                || s.is(Kind.UNKNOWN)
                                        && Character.isUpperCase(sentence.line().charAt(s.from())));
    }

    /** Whether nothing beside the order's words stands before, or behind them. */
    static boolean isStrangeBefore(Part part) {
        List<Sense> senses = part.senses();
        return senses.subList(0, first(senses)).stream().anyMatch(s -> s.is(Kind.UNKNOWN));
    }

    static boolean isStrangeBehind(Part part) {
        List<Sense> senses = part.senses();
        return senses.subList(last(senses) + 1, senses.size()).stream().anyMatch(s -> s.is(Kind.UNKNOWN));
    }
}
