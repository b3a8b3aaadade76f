package dawnkettle.night;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * What must be due when, worked out without the service's own timetable: by walking minutes of the JDK's
 * {@code ZoneRules} until the wall clock shows the time or has passed it.
 */
record ExpectedSteps(ZoneId zone, Predicate<LocalDate> isWorkDay) {
    static final NightSettings.Times TIMES = new NightSettings.Times(
            LocalTime.of(5, 0),
            LocalTime.of(15, 0),
            LocalTime.of(2, 30),
            45,
            LocalTime.of(6, 30),
            LocalTime.of(17, 0),
            LocalTime.of(14, 0),
            LocalTime.of(23, 30),
            DayOfWeek.MONDAY,
            LocalTime.of(7, 0));

    /** One thing that must happen once: until {@code latest} it is done, later it is skipped. */
    record Slot(String step, LocalDate date, Instant due, Instant latest) {}

    /** All that belongs to the days from one to another, the second left out. */
    List<Slot> slots(LocalDate from, LocalDate until) {
        List<Slot> slots = new ArrayList<>();
        for (LocalDate day = from; day.isBefore(until); day = day.plusDays(1)) {
            if (isWorkDay.test(day)) slots.addAll(night(day));
            if (day.getDayOfWeek() == DayOfWeek.MONDAY) slots.add(slot("costs", day, day, "07:00", 60));
            if (isDrill(day)) slots.add(slot("recall drill", day, day, "10:00", 60));
        }
        return slots;
    }

    private List<Slot> night(LocalDate day) {
        LocalDate before = day.minusDays(1);
        while (!isWorkDay.test(before)) before = before.minusDays(1);
        return List.of(
                slot("soak call", day, before, "05:00", 10),
                slot("fallback", day, before, "14:00", 12),
                slot("close", day, before, "15:00", 18),
                slot("plan", day, before, "15:00", 18),
                slot("sheets", day, before, "15:00", 18),
                slot("backup", day, before, "23:30", 20),
                slot("dawn check", day, day, "02:30", 6),
                slot("labels", day, day, "02:30", 22),
                slot("summary", day, day, "06:30", 12));
    }

    /** The first work day on or after the first of the month. */
    private boolean isDrill(LocalDate day) {
        if (!isWorkDay.test(day)) return false;
        for (LocalDate earlier = day.withDayOfMonth(1); earlier.isBefore(day); earlier = earlier.plusDays(1))
            if (isWorkDay.test(earlier)) return false;
        return true;
    }

    private Slot slot(String step, LocalDate date, LocalDate on, String time, int usefulHours) {
        Instant due = firstShowing(on.atTime(LocalTime.parse(time)));
        return new Slot(step, date, due, due.plus(Duration.ofHours(usefulHours)));
    }

    /** The first minute at which the wall clock shows a local time, or has jumped past it. */
    Instant firstShowing(LocalDateTime local) {
        Instant around = local.toInstant(ZoneOffset.UTC)
                .minusSeconds(zone.getRules()
                        .getStandardOffset(local.toInstant(ZoneOffset.UTC))
                        .getTotalSeconds());
        Instant minute = around.minus(Duration.ofHours(3));
        while (shown(minute).isBefore(local)) minute = minute.plusSeconds(60);
        return minute;
    }

    private LocalDateTime shown(Instant instant) {
        return LocalDateTime.ofInstant(instant, zone.getRules().getOffset(instant));
    }
}
