package dawnkettle.plan;

import dawnkettle.shop.Route;
import java.time.Instant;
import java.time.LocalDate;

/** A route on a day of delivery, as the plan waits for it. */
record Van(Route route, LocalDate date, Instant departs, int packByMinute) {
    static Van of(Route route, LocalDate date, DayClock clock) {
        int departs = clock.minute(date, route.departs());
        return new Van(route, date, clock.instant(departs), departs - route.loadMinutes());
    }

    String due() {
        return due(route.code(), date);
    }

    static String due(String route, LocalDate date) {
        return route + " " + date;
    }
}
