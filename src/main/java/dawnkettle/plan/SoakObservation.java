package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.shop.Tub;
import java.time.Duration;
import java.time.Instant;

/**
 * Somebody cut a bean and looked: was it ready so many minutes after filling?
 *
 * @param water mean temperature of the water until then
 * @param ready whether it was soaked through
 */
public record SoakObservation(Celsius water, int minutes, boolean ready) {
    public SoakObservation {
        if (minutes < 1)
            throw new IllegalArgumentException(
                    "beans are looked at after they were put in, not after " + minutes + " min");
    }

    /** A look at a tub that was filled as planned; the mean of its water by what was counted with. */
    public static SoakObservation of(PlannedSoak soak, Tub tub, Instant at, boolean ready) {
        int minutes = (int) Math.max(1, Duration.between(soak.fillAt(), at).toMinutes());
        TubWater water = TubWater.inSteadyRoom(soak.waterTemperature(), soak.room(), tub);
        double sum = 0;
        for (int minute = 0; minute < minutes; minute++) sum += water.at(minute);
        return new SoakObservation(Celsius.tenths((int) Math.round(10 * sum / minutes)), minutes, ready);
    }
}
