package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.Piece.Talk;
import dawnkettle.book.Piece.Verb;
import dawnkettle.book.Piece.Want;
import dawnkettle.book.Piece.Wish;
import dawnkettle.book.Sense.Kind;
import dawnkettle.book.Sentence.Part;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Settles what of a sentence stays certain once all its parts are read. */
record SettleSentence(
        Sentence sentence, List<Part> parts, Leftover leftover, List<Piece> pieces, List<Integer> origins) {
    /** What an unsure word or a change beside other wishes leaves uncertain. */
    void all(Optional<Kind> carried, boolean doubtful, BitSet uncertain) {
        if (carried.filter(deed -> deed == Kind.DROP && isDayAlone()).isPresent())
            add(new Want(Wish.of(Verb.SKIP), sentence.words()));
        else if (carried.isPresent()) add(new Doubt(ReadSentence.UNSURE, sentence.words()));
        if (doubtful || isMixed()) pieces.replaceAll(SettleSentence::doubted);
        for (int i = 0; i < pieces.size(); i++)
            if (uncertain.get(origins.get(i))) pieces.set(i, doubted(pieces.get(i)));
        int condition = Taints.condition(parts);
        if (condition >= 0) conditional(condition);
        boolean order = pieces.stream().anyMatch(piece -> piece instanceof Want || piece instanceof Doubt);
        if (order)
            pieces.replaceAll(piece ->
                    piece instanceof Talk talk && isRisky(talk) ? new Doubt(ReadSentence.UNREAD, talk.words()) : piece);
    }

    /** "And if the road is open Saturday too": one question to the end of the sentence, and no day of anything else. */
    private void conditional(int from) {
        int kept = 0;
        while (kept < pieces.size() && origins.get(kept) < from) kept++;
        pieces.subList(kept, pieces.size()).clear();
        origins.subList(kept, origins.size()).clear();
        List<Sense> all = sentence.senses();
        String words = sentence.line()
                .substring(
                        parts.get(from).senses().get(0).from(),
                        all.get(all.size() - 1).until());
        pieces.add(new Doubt(ReadSentence.UNSURE, words));
        origins.add(from);
    }

    /** Beside a change what is merely named may be changed as well. */
    private boolean isMixed() {
        boolean sets = pieces.stream()
                .anyMatch(piece -> piece instanceof Want want && want.wish().verb() == Verb.SET);
        boolean plain = pieces.stream()
                .anyMatch(piece -> piece instanceof Want want
                        && want.wish().verb() == Verb.MORE
                        && !want.wish().as().equals("more"));
        return sets && plain;
    }

    /** "Cancel Thursday completely" */
    private boolean isDayAlone() {
        return !sentence.has(Kind.UNKNOWN)
                && !sentence.has(Kind.NUMBER)
                && !parts.stream().anyMatch(Part::isOfOrder)
                && !pieces.isEmpty()
                && pieces.stream().allMatch(Days.class::isInstance);
    }

    /** Of the last part. */
    private void add(Piece piece) {
        pieces.add(piece);
        origins.add(parts.size());
    }

    static Piece doubted(Piece piece) {
        return piece instanceof Want want ? new Doubt(ReadSentence.UNSURE, want.words()) : piece;
    }

    private boolean isRisky(Talk talk) {
        return parts.stream()
                .anyMatch(part -> Leftover.isRisky(part)
                        && !part.has(Kind.HELLO, Kind.BYE)
                        && !leftover.isReason(part)
                        && !Taints.isRemark(part)
                        && sentence.words(part.senses()).equals(talk.words()));
    }
}
