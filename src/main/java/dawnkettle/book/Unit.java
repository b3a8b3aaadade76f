package dawnkettle.book;

import dawnkettle.book.Piece.Days;
import dawnkettle.book.Piece.Want;
import java.util.List;

/** A sentence as it was read: its days and wishes decide which day is whose. */
record Unit(List<Piece> pieces, String words) {
    Unit {
        pieces = List.copyOf(pieces);
    }

    /** Days and wishes only. */
    List<Piece> main() {
        return pieces.stream()
                .filter(piece -> piece instanceof Days || piece instanceof Want)
                .toList();
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

    boolean hasDays() {
        return !days().isEmpty();
    }

    boolean beginsWithDays() {
        return !main().isEmpty() && main().get(0) instanceof Days;
    }

    boolean endsWithDays() {
        return !main().isEmpty() && main().get(main().size() - 1) instanceof Days;
    }
}
