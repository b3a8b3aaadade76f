package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Want;
import java.util.List;

/** A sentence as it was read: its days and wishes decide which day is whose. @param isAsked whether it asks for something, "please" */
record Unit(List<Piece> pieces, String words, boolean isAsked) {
    Unit {
        pieces = List.copyOf(pieces);
    }

    Unit(List<Piece> pieces, String words) {
        this(pieces, words, false);
    }

    /** Days and wishes only. */
    List<Piece> main() {
        return pieces.stream()
                .filter(piece -> piece instanceof Days || piece instanceof Want)
                .toList();
    }

    private List<Piece> order() {
        return pieces.stream().filter(piece -> !(piece instanceof Piece.Talk)).toList();
    }

    List<Days> days() {
        return pieces.stream()
                .filter(Days.class::isInstance)
                .map(Days.class::cast)
                .toList();
    }

    boolean hasWants() {
        return pieces.stream().anyMatch(Want.class::isInstance);
    }

    boolean hasDoubts() {
        return pieces.stream().anyMatch(Piece.Doubt.class::isInstance);
    }

    boolean hasDays() {
        return !days().isEmpty();
    }

    boolean beginsWithDays() {
        return !order().isEmpty() && order().get(0) instanceof Days;
    }

    boolean endsWithDays() {
        return !order().isEmpty() && order().get(order().size() - 1) instanceof Days;
    }
}
