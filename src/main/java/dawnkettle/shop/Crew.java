package dawnkettle.shop;

/** Half people at work in an opening on each making day; gaps between openings are breaks. */
public record Crew(Opening opening, int halfHands) {}
