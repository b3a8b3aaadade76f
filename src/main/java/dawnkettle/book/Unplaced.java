package dawnkettle.book;

/** A line of the book that no making day can serve any more, because the owner's files changed since it was taken. */
public record Unplaced(OrderLine line, int packs, String why) {}
