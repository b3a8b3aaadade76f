package dawnkettle.intake;

import dawnkettle.measure.Celsius;

/** How warm the soak room and the tap are, and in words where that is known from and what failed to answer. */
public record RoomReading(Celsius room, Celsius tap, String source) {}
