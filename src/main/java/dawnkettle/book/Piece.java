package dawnkettle.book;

import java.time.LocalDate;
import java.util.List;

/** A part of a mail as it was read, in its order: a day, a wish without its day yet, a doubt, or talk. */
sealed interface Piece {
    String words();

    /** A day of delivery or several. @param asked why they must be asked; empty where they are certain @param behind whether they belong to what stands before them ("all for Friday") */
    record Days(List<LocalDate> days, String asked, boolean behind, String words) implements Piece {
        public Days {
            days = List.copyOf(days);
        }

        boolean sameAs(Days other) {
            return days.equals(other.days) && asked.isEmpty() && other.asked.isEmpty();
        }
    }

    /** What is wished, but for the day. */
    record Want(Wish wish, String words) implements Piece {}

    /** Words of an order that are not certain. */
    record Doubt(String why, String words) implements Piece {}

    /** Words in which no order is seen. */
    record Talk(String words) implements Piece {}

    /** The wish itself; {@code product} and {@code packs} where it has them; {@code as} a day it is like, or "more". */
    record Wish(Verb verb, String product, int packs, String as) {
        static Wish of(Verb verb) {
            return new Wish(verb, "", 0, "");
        }
    }

    /** What is to be done. */
    enum Verb {
        MORE,
        SET,
        DROP,
        SKIP,
        TWICE,
        /** As on another day, {@code as}: a date, or "week". */
        AS,
        /** As was just said for another day. */
        COPY
    }
}
