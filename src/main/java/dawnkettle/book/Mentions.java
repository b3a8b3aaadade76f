package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.Piece.Talk;
import dawnkettle.book.Piece.Want;
import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.List;

/** What a day is worth in a sentence that orders nothing and is not understood. */
final class Mentions {
    private static final String WHICH = "The day is in words that we do not understand; which is meant?";

    private Mentions() {}

    /** It heads what follows, or is not to be relied on, or is none of delivery at all: "the fair is on Saturday." */
    static List<Piece> settled(List<Piece> pieces, Sentence sentence) {
        boolean wanted = pieces.stream().anyMatch(Want.class::isInstance);
        if (wanted) return pieces;
        boolean strange = pieces.stream().anyMatch(Doubt.class::isInstance)
                || pieces.stream().anyMatch(Talk.class::isInstance) && isStrange(sentence);
        if (!strange || isHead(sentence)) return pieces;
        if (sentence.has(Kind.PAST) && !sentence.has(Kind.COLON) || isRemark(sentence))
            return pieces.stream().filter(piece -> !(piece instanceof Days)).toList();
        return pieces.stream()
                .filter(piece -> !(piece instanceof Days days && days.asked().equals(DaysSaid.LATE)))
                .map(Mentions::asked)
                .toList();
    }

    private static boolean isStrange(Sentence sentence) {
        return sentence.parts().stream()
                .anyMatch(part -> part.has(Leftover.STRANGE) && !part.has(Kind.HELLO, Kind.BYE));
    }

    /** "We hereby order for Friday", "for the chapel this Thursday", "this is what we would like on Monday:" */
    private static boolean isHead(Sentence sentence) {
        List<Part> parts = sentence.parts();
        boolean colon = sentence.senses().get(sentence.senses().size() - 1).is(Kind.COLON);
        if (colon && parts.stream().noneMatch(Leftover::isRisky)) return true;
        boolean leads = parts.size() > 1 && parts.get(1).isDay() && Taints.leadsTo(parts.get(0));
        boolean plain = parts.stream().skip(1).noneMatch(part -> part.has(Leftover.STRANGE));
        return leads && plain && !sentence.has(Kind.QUESTION_MARK);
    }

    /** A sentence of its own, not of the order or its delivery. */
    private static boolean isRemark(Sentence sentence) {
        List<Sense> senses = sentence.senses();
        int last = senses.get(senses.size() - 1).until();
        boolean whole = sentence.line().substring(last).strip().matches("[.!].*")
                || sentence.has(Kind.QUESTION_MARK)
                || !sentence.line().substring(0, senses.get(0).from()).isBlank()
                || senses.stream().anyMatch(sense -> Asking.says(sense, "we"));
        boolean first =
                senses.get(0).is(Kind.ON, Kind.ON_ASKED) && senses.stream().noneMatch(s -> Asking.says(s, "we"));
        boolean ofOrder = senses.stream().anyMatch(s -> Asking.is(s) || Asking.says(s, "thing"));
        boolean risky = sentence.senses().stream().anyMatch(s -> s.is(Leftover.RISKY) && !s.is(Kind.QUESTION_MARK));
        return whole && !first && !ofOrder && !risky && !sentence.has(Kind.COLON, Kind.KIND, Kind.CODE, Kind.SKIP);
    }

    private static Piece asked(Piece piece) {
        if (!(piece instanceof Days said) || !said.asked().isEmpty()) return piece;
        return new Days(said.days(), WHICH, false, said.words());
    }
}
