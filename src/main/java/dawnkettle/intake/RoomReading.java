package dawnkettle.intake;

import dawnkettle.measure.Celsius;
import java.time.Instant;

/** How warm the soak room and the tap are, and in words where that is known from and what failed to answer. */
public record RoomReading(Celsius room, Celsius tap, String source) {
    /** How warm the room was at an instant. */
    public record Logged(Instant at, Celsius celsius) {}
}
