package dawnkettle.floor;

/** How many half people are there in a window; where no window lies, nobody is. */
public record Hands(Window window, int halves) {}
