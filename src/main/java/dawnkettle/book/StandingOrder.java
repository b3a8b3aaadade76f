package dawnkettle.book;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Optional;

/** What a customer takes every week on a weekday unless told otherwise; {@code until} is the last day. */
public record StandingOrder(
        String customer, String product, DayOfWeek weekday, int packs, LocalDate from, Optional<LocalDate> until) {
    public boolean holdsOn(LocalDate day) {
        return day.getDayOfWeek() == weekday
                && !day.isBefore(from)
                && until.map(last -> !day.isAfter(last)).orElse(true);
    }
}
