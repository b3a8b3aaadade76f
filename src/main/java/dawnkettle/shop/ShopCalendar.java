package dawnkettle.shop;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Map;
import java.util.Set;

/**
 * On which days the shop makes.
 *
 * @param workDays weekdays on which it makes
 * @param closed single days on which it does not, with why
 * @param withoutVans those of the closed days on which no van runs either
 */
public record ShopCalendar(Set<DayOfWeek> workDays, Map<LocalDate, String> closed, Set<LocalDate> withoutVans) {
    /** A closing longer than this is taken for a mistake in the calendar. */
    private static final int LONGEST_CLOSING_DAYS = 60;

    public ShopCalendar {
        workDays = Set.copyOf(workDays);
        closed = Map.copyOf(closed);
        withoutVans = Set.copyOf(withoutVans);
        if (workDays.isEmpty()) throw new IllegalArgumentException("a shop works on at least one weekday");
    }

    /** Closed days stop the making, not the vans. */
    public ShopCalendar(Set<DayOfWeek> workDays, Map<LocalDate, String> closed) {
        this(workDays, closed, Set.of());
    }

    public boolean isWorkDay(LocalDate day) {
        return workDays.contains(day.getDayOfWeek()) && !closed.containsKey(day);
    }

    /** The first work day after {@code day}. */
    public LocalDate next(LocalDate day) {
        return walk(day.plusDays(1), 1);
    }

    /** The last work day before {@code day}. */
    public LocalDate previous(LocalDate day) {
        return walk(day.minusDays(1), -1);
    }

    /** {@code day} itself where it is a work day, otherwise the last one before it. */
    public LocalDate onOrBefore(LocalDate day) {
        return walk(day, -1);
    }

    private LocalDate walk(LocalDate from, int step) {
        LocalDate day = from;
        for (int i = 0; i < LONGEST_CLOSING_DAYS; i++, day = day.plusDays(step)) if (isWorkDay(day)) return day;
        throw new IllegalStateException("no work day within " + LONGEST_CLOSING_DAYS + " days of " + from);
    }
}
