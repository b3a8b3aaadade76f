package dawnkettle.conf;

import dawnkettle.shop.ShopCalendar;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reads {@code calendar.csv}: the single days on which nothing is made. */
final class ReadCalendar {
    static final String FILE = "calendar.csv";
    static final List<String> COLUMNS = List.of("date", "vans", "why");

    /** Days on end without making that no shop's calendar means. */
    private static final int LONGEST_CLOSING_DAYS = 45;

    private final Set<DayOfWeek> workDays;
    private final Map<LocalDate, String> closed = new HashMap<>();
    private final Set<LocalDate> withoutVans = new HashSet<>();

    ReadCalendar(Set<DayOfWeek> workDays) {
        this.workDays = workDays;
    }

    ShopCalendar read(Rows rows) {
        rows.cells().forEach(this::one);
        ShopCalendar calendar = new ShopCalendar(workDays, closed, withoutVans);
        for (Cells row : rows.cells()) notTooLong(row.in("date"), calendar);
        return calendar;
    }

    private void one(Cells row) {
        int before = row.problems().count();
        Written written = row.in("date");
        LocalDate date = written.date();
        boolean vans = row.in("vans").truth();
        String why = row.in("why").words();
        if (row.problems().count() > before) return;
        if (closed.putIfAbsent(date, why) != null) written.bad(date, "is there twice", "keep one");
        if (!vans) withoutVans.add(date);
    }

    private static void notTooLong(Written written, ShopCalendar calendar) {
        for (LocalDate date : calendar.closed().keySet()) {
            if (!date.toString().equals(written.text())) continue;
            LocalDate day = date;
            while (!calendar.isWorkDay(day) && day.isAfter(date.minusDays(LONGEST_CLOSING_DAYS)))
                day = day.minusDays(1);
            if (day.equals(date.minusDays(LONGEST_CLOSING_DAYS)))
                written.bad(
                        date,
                        "ends " + LONGEST_CLOSING_DAYS + " days on end on which nothing is made",
                        "look at the year of these dates");
        }
    }
}
