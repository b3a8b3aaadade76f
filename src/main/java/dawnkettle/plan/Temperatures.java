package dawnkettle.plan;

import dawnkettle.measure.Celsius;

/**
 * How warm the soak room and the tap are, and where that is known from, in words for the sheet.
 *
 * @param room now, and what is counted with from now on
 * @param curve the room through the hours behind us as far as they were measured, and from now on
 */
public record Temperatures(Celsius room, Celsius tap, String source, RoomCurve curve) {
    /** A room of which nothing but one temperature is known. */
    public Temperatures(Celsius room, Celsius tap, String source) {
        this(room, tap, source, RoomCurve.steady(room));
    }
}
