package dawnkettle.plan;

import dawnkettle.floor.Window;
import dawnkettle.shop.Opening;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;

/**
 * Minutes of a production day: elapsed minutes since its local midnight, below zero for the day before. Elapsed, so that
 * a soak or a cook lasts its full time on the nights the clocks change.
 */
record DayClock(LocalDate day, ZoneId zone) {
    /** Nothing is planned later than this after midnight. */
    static final int HORIZON_MINUTES = 30 * 60;

    private Instant origin() {
        return day.atStartOfDay(zone).toInstant();
    }

    int minute(Instant instant) {
        return (int) Math.floorDiv(Duration.between(origin(), instant).toSeconds(), 60L);
    }

    /** The first whole minute at or after {@code instant}. */
    int minuteAtOrAfter(Instant instant) {
        int minute = minute(instant);
        return instant(minute).equals(instant) ? minute : minute + 1;
    }

    Instant instant(int minute) {
        return origin().plusSeconds(60L * minute);
    }

    int minute(LocalDate date, LocalTime time) {
        return minute(date.atTime(time).atZone(zone).toInstant());
    }

    Window window(Opening opening) {
        return new Window(minute(day, opening.from()), minute(day, opening.until()));
    }

    LocalDate date(int minute) {
        return instant(minute).atZone(zone).toLocalDate();
    }
}
