package dawnkettle.night;

import dawnkettle.shop.ShopCalendar;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** When which step is due: one slot a step and business date, whatever the clocks do that night. */
public record Timetable(ShopCalendar calendar, ZoneId zone, NightSettings.Times times, NightSettings.Records records) {
    /** Calendar days that are looked at round now: back always, back at most after the machine was dark, and ahead. */
    private static final int DAYS_BACK = 3;

    private static final int MOST_DAYS_BACK = 60;
    private static final int DAYS_AHEAD = 5;

    public Timetable(ShopCalendar calendar, ZoneId zone, NightSettings.Times times) {
        this(calendar, zone, times, NightSettings.Records.USUAL);
    }

    /**
     * One step of one business date.
     *
     * @param businessDate the production day; for the cost report and the recall drill the day it is due
     */
    public record Slot(Step step, LocalDate businessDate, Instant due) {
        public Instant latest() {
            return due.plus(step.useful());
        }
    }

    /** Slots due from some days before {@code now} to some days after it, the earliest first. */
    public List<Slot> around(Instant now) {
        return around(now, LocalDate.MAX);
    }

    /** The same from an earlier day on, where nobody has looked since; two months back at most. */
    public List<Slot> around(Instant now, LocalDate lookedAt) {
        LocalDate today = now.atZone(zone).toLocalDate();
        LocalDate from = later(earlier(today, lookedAt).minusDays(DAYS_BACK), today.minusDays(MOST_DAYS_BACK));
        List<Slot> slots = new ArrayList<>();
        for (LocalDate day = from; !day.isAfter(last(today)); day = day.plusDays(1)) {
            if (calendar.isWorkDay(day)) slots.addAll(slots(day));
            if (day.getDayOfWeek() == times.costDay()) slots.add(new Slot(Step.COSTS, day, at(day, times.costAt())));
            if (day.equals(drill(day))) slots.add(new Slot(Step.RECALL_DRILL, day, at(day, records.drillAt())));
        }
        slots.sort(Comparator.comparing(Slot::due).thenComparing(Slot::step));
        return slots;
    }

    /** The book of the day after a long closing closes before it, so that that day counts however far off it is. */
    private LocalDate last(LocalDate today) {
        return later(today.plusDays(DAYS_AHEAD), calendar.next(today));
    }

    private static LocalDate earlier(LocalDate one, LocalDate other) {
        return one.isBefore(other) ? one : other;
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    /** The day of a month on which a recall is practised: the first work day on or after the one that was named. */
    private LocalDate drill(LocalDate inMonth) {
        LocalDate named = inMonth.withDayOfMonth(records.drillDay());
        return calendar.isWorkDay(named) ? named : calendar.next(named);
    }

    /** The slots of a production day. */
    public List<Slot> slots(LocalDate productionDate) {
        LocalDate before = calendar.previous(productionDate);
        return List.of(
                new Slot(Step.SOAK_CALL, productionDate, soakCall(productionDate)),
                new Slot(Step.FALLBACK, productionDate, at(before, times.fallback())),
                new Slot(Step.CLOSE, productionDate, close(productionDate)),
                new Slot(Step.PLAN, productionDate, close(productionDate)),
                new Slot(Step.SHEETS, productionDate, close(productionDate)),
                new Slot(Step.SELF_TEST, productionDate, at(before, times.selfTest())),
                new Slot(Step.BACKUP, productionDate, at(before, times.backup())),
                new Slot(Step.DAWN_CHECK, productionDate, at(productionDate, times.dawnCheck())),
                new Slot(Step.LABELS, productionDate, at(productionDate, times.dawnCheck())),
                new Slot(Step.SUMMARY, productionDate, at(productionDate, times.summary())));
    }

    public Instant soakCall(LocalDate productionDate) {
        return at(calendar.previous(productionDate), times.soakCall());
    }

    public Instant close(LocalDate productionDate) {
        return at(calendar.previous(productionDate), times.close());
    }

    /** The first production day whose book closes at or after {@code instant}. */
    public LocalDate closingFrom(Instant instant) {
        LocalDate day = instant.atZone(zone).toLocalDate();
        if (calendar.isWorkDay(day) && !at(day, times.close()).isBefore(instant)) return calendar.next(day);
        return calendar.next(calendar.next(day));
    }

    /**
     * The instant of a local time on a day: where the clocks jump over it, the first instant after the gap; where they
     * show it twice, the first.
     */
    public Instant at(LocalDate day, LocalTime time) {
        LocalDateTime local = day.atTime(time);
        ZoneOffsetTransition transition = zone.getRules().getTransition(local);
        if (transition != null && transition.isGap()) return transition.getInstant();
        return local.atZone(zone).withEarlierOffsetAtOverlap().toInstant();
    }
}
