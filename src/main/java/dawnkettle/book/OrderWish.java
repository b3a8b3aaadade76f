package dawnkettle.book;

import java.time.LocalDate;

/** One thing that a customer's mail asks for, with the words it was read from. */
public sealed interface OrderWish {
    /** The day of delivery. */
    LocalDate day();

    /** The words of the mail that it came from, as written. */
    String words();

    /** A new line: packs of a product, besides whatever is there. */
    record More(LocalDate day, String product, int packs, String words) implements OrderWish {}

    /** What is there for the product that day is from now on this many packs. */
    record SetTo(LocalDate day, String product, int packs, String words) implements OrderWish {}

    /** Nothing of the product that day. */
    record Drop(LocalDate day, String product, String words) implements OrderWish {}

    /** Nothing at all that day. */
    record SkipDay(LocalDate day, String words) implements OrderWish {}

    /** The same as on another day. */
    record SameAs(LocalDate day, LocalDate as, String words) implements OrderWish {}

    /** Twice what is there of the product that day. */
    record Twice(LocalDate day, String product, String words) implements OrderWish {}
}
