package dawnkettle.shop;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.Set;

/**
 * A van's round.
 *
 * @param days weekdays on which it runs
 * @param departs local time the van leaves
 * @param loadMinutes minutes before that at which everything must stand packed
 * @param cases whole and part cases that the van holds
 * @param weight how much a minute late weighs against other routes, at least 1
 * @param madeSameDay whether the day's own making goes with it; otherwise what it carries is made a working day before
 */
public record Route(
        String code,
        String name,
        Set<DayOfWeek> days,
        LocalTime departs,
        int loadMinutes,
        int cases,
        int weight,
        boolean madeSameDay) {
    public Route {
        days = Set.copyOf(days);
    }
}
