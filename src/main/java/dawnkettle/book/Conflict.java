package dawnkettle.book;

/** The same order and line came again with other content: the first stays, somebody has to ask. */
public record Conflict(OrderLine first, OrderLine other) {}
