package dawnkettle.shop;

import java.time.DayOfWeek;
import java.util.Set;

/**
 * When somebody is there to fill a tub.
 *
 * @param days weekdays on which it holds
 * @param onClosedDays whether it holds on a closed day too
 */
public record Presence(Set<DayOfWeek> days, Opening opening, boolean onClosedDays) {
    public Presence {
        days = Set.copyOf(days);
    }
}
