package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.List;

/**
 * What words that we do not know do to the rest of their sentence.
 *
 * <p>In the place of a product ("15 puchoes", "puchoes 15") they make that entry alone uncertain. Anywhere else they may say
 * what all of it is about ("you sent 6 firm, 8 medium", "6 firm, 8 medium arrived"), and nothing of it is certain; but a
 * greeting, a name at the end and a reason for it say nothing.
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
    private static final Kind[] OF_PACK = {Kind.TIMES, Kind.CASE, Kind.FORM, Kind.UNIT, Kind.SIZE, Kind.COLON};
    private static final Kind[] TURNS = {
        Kind.NUMBER, Kind.KIND, Kind.CODE, Kind.UNSURE, Kind.NO, Kind.OLD, Kind.DROP, Kind.SET, Kind.SET_TO,
        Kind.ONLY, Kind.SAME, Kind.SAME_AS, Kind.DOUBLE, Kind.PAST, Kind.LAST, Kind.LAST_WEEK, Kind.MORE, Kind.CASE
    };

    private final Sentence sentence;
    private final List<Part> parts;
    private final boolean skips;

    Leftover(Sentence sentence, List<Part> parts) {
        this.sentence = sentence;
        this.parts = parts;
        this.skips = sentence.has(Kind.SKIP) && !sentence.has(TURNS);
    }

    /** Whether nothing of the sentence is certain. */
    boolean governs() {
        for (int i = 0; i < parts.size(); i++)
            if (governs(parts.get(i), i > 0 && parts.get(i - 1).has(Kind.BYE), i == parts.size() - 1)) return true;
        return false;
    }

    private boolean governs(Part part, boolean afterBye, boolean last) {
        if (!part.has(Kind.UNKNOWN, Kind.LAST, Kind.LAST_WEEK, Kind.REASON)) return false;
        if (part.has(Kind.HELLO, Kind.BYE) || afterBye && !part.isOfOrder()) return false;
        return !isEntry(part) && !isReason(part) && !(last && isName(part)) && !isIntroduction(part);
    }

    private static boolean isEntry(Part part) {
        List<Sense> senses = part.senses().stream().filter(s -> !s.is(BETWEEN)).toList();
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
        return said && !part.has(TURNS);
    }

    private boolean isName(Part part) {
        List<Sense> senses = part.senses();
        long unknown = senses.stream().filter(s -> s.is(Kind.UNKNOWN)).count();
        return unknown <= MOST_OF_A_NAME
                && senses.stream()
                        .allMatch(s -> s.is(BETWEEN)
                                || s.is(Kind.UNKNOWN)
                                        && Character.isUpperCase(sentence.line().charAt(s.from())));
    }

    /** "Wilma here" */
    private boolean isIntroduction(Part part) {
        long unknown = part.senses().stream().filter(s -> s.is(Kind.UNKNOWN)).count();
        boolean only = part.senses().stream().allMatch(s -> s.is(BETWEEN) || s.is(Kind.UNKNOWN));
        return only
                && unknown <= MOST_OF_A_NAME
                && sentence.words(part.senses()).matches("(?i).*\\bhere");
    }
}
