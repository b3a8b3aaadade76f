package dawnkettle.book;

import dawnkettle.book.Piece.Doubt;
import dawnkettle.book.Piece.Talk;
import dawnkettle.book.Piece.Want;
import dawnkettle.book.Sense.Kind;
import java.util.List;

/** A line that heads those below it in words that are not understood: "What we got last time:". */
final class UnclearHead {
    private static final String WHY = "The line above it is not understood; is it an order?";

    private UnclearHead() {}

    static boolean isOne(String line, List<Sentence> sentences, List<Unit> units) {
        if (sentences.isEmpty()) return false;
        List<Sense> senses = sentences.get(sentences.size() - 1).senses();
        boolean strange = senses.stream()
                .anyMatch(s -> s.is(Kind.UNSURE, Kind.PAST, Kind.LAST, Kind.LAST_WEEK, Kind.NO, Kind.FORGET));
        boolean polite = senses.stream().anyMatch(s -> s.is(Kind.HELLO, Kind.BYE));
        boolean past = senses.stream().anyMatch(s -> s.is(Kind.PAST, Kind.LAST, Kind.LAST_WEEK));
        boolean entry = units.stream()
                .anyMatch(unit -> unit.hasWants() || unit.pieces().stream().anyMatch(Doubt.class::isInstance));
        boolean open = line.endsWith(":") || line.endsWith("-") || past && !line.matches(".*[.!?]");
        return strange && open && !polite && (!entry || line.endsWith(":"));
    }

    /** Entries without days of their own belong to the head. */
    static boolean goesOnBelow(Unit unit) {
        if (unit.isAsked()) return false;
        boolean talk = !unit.pieces().isEmpty() && unit.pieces().stream().allMatch(Talk.class::isInstance);
        return !unit.hasDays() && !talk;
    }

    static Unit doubted(Unit unit) {
        return new Unit(
                unit.pieces().stream()
                        .map(piece -> piece instanceof Want want ? new Doubt(WHY, want.words()) : piece)
                        .toList(),
                unit.words());
    }
}
