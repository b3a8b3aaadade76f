package dawnkettle.shop;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Volume;

/**
 * A soaking tub.
 *
 * @param hoursToRoom how fast its water drifts to the room's temperature: the time constant of Newton's law, in tenths of an hour
 */
public record Tub(String code, Volume volume, Mass mostBeans, int hoursToRoomTenths) {}
