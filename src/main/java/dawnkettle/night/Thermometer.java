package dawnkettle.night;

import dawnkettle.plan.Temperatures;
import java.time.Instant;

/** How warm the soak room and the tap are. */
public interface Thermometer {
    Temperatures read(Instant now);
}
