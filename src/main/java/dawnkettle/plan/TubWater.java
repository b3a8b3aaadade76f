package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.shop.Tub;
import java.time.Instant;

/** How warm a tub's water is in each minute after filling, in °C. */
interface TubWater {
    double at(int minute);

    /** Water that drifts from its filling temperature to that of a steady room (Newton). */
    static TubWater inSteadyRoom(Celsius water, Celsius room, Tub tub) {
        double hoursToRoom = tub.hoursToRoomTenths() / 10.0;
        return minute -> room.degrees()
                + (water.degrees() - room.degrees()) * StrictMath.exp(-(minute + 0.5) / 60 / hoursToRoom);
    }

    /** Water that drifts after a room which gets warmer and colder; minute by minute, asked in order. */
    static TubWater inRoom(Celsius water, RoomCurve room, Tub tub, Instant fill) {
        double stays = StrictMath.exp(-1 / (6.0 * tub.hoursToRoomTenths()));
        double half = StrictMath.sqrt(stays);
        return new TubWater() {
            private int next;
            private double atStart = water.degrees();

            @Override
            public double at(int minute) {
                if (minute < next) {
                    next = 0;
                    atStart = water.degrees();
                }
                for (; next < minute; next++) atStart = drifted(atStart, next, stays);
                return drifted(atStart, minute, half);
            }

            private double drifted(double from, int minute, double share) {
                double around = room.at(fill.plusSeconds(60L * minute + 30));
                return around + (from - around) * share;
            }
        };
    }

    /** Water of a tub filled at an instant, as the room is known to stand around it. */
    static TubWater of(Celsius water, Temperatures temperatures, Tub tub, Instant fill) {
        RoomCurve curve = temperatures.curve();
        return curve.isSteady() || !fill.isBefore(curve.steadyFrom())
                ? inSteadyRoom(water, temperatures.room(), tub)
                : inRoom(water, curve, tub, fill);
    }

    /** Water that a thermometer in the tub itself has followed. */
    static TubWater measured(RoomCurve water, Instant fill) {
        return minute -> water.at(fill.plusSeconds(60L * minute + 30));
    }
}
