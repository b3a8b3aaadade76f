package dawnkettle.plan;

import dawnkettle.measure.Celsius;

/** How warm the soak room and the tap are, and where that is known from, in words for the sheet. */
public record Temperatures(Celsius room, Celsius tap, String source) {}
