package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Days of delivery as people say them, counted from the day of the mail; each is a day, or the reason to ask.
 *
 * <p>It goes along one text from its first word to its last: a weekday without a date that goes back behind a day already
 * said is asked.
 */
final class DaysSaid {
    /** Nobody orders fresh tofu for later; a figure beyond it was meant otherwise. */
    static final int FARTHEST_DAYS = 60;

    static final String LATE = "That day is too late to be ordered for.";
    static final String APART = "The weekday and the date do not go together; which is meant?";

    private final LocalDate mail;
    private final OrderReading context;
    private final boolean dayFirst;
    private boolean nextWeek;
    private boolean anyDay;
    private Optional<LocalDate> week = Optional.empty();
    private LocalDate latest = LocalDate.MIN;

    DaysSaid(LocalDate mail, OrderReading context, boolean dayFirst) {
        this.mail = mail;
        this.context = context;
        this.dayFirst = dayFirst;
    }

    /** Weekdays from here on are those of the week after the mail's. */
    void moveToNextWeek() {
        nextWeek = true;
    }

    /** Weekdays from here on are those of the week of a day. */
    void moveToWeekOf(LocalDate day) {
        week = Optional.of(day.minusDays(day.getDayOfWeek().getValue() - 1L));
    }

    /** To the week that another text said. */
    void moveAs(DaysSaid other) {
        if (other.week.isPresent()) week = other.week;
    }

    /** Whether what is said now is no day of delivery but names a week. */
    void takeAnyDay(boolean any) {
        anyDay = any;
    }

    /** As far as days were said already; what was said since can be taken back with it. */
    LocalDate latest() {
        return latest;
    }

    void backTo(LocalDate said) {
        latest = said;
    }

    LocalDate mailDay() {
        return mail;
    }

    /** A weekday alone. */
    Sense weekday(Sense said, boolean inNextWeek) {
        DayOfWeek weekday = DayOfWeek.of(said.figure());
        if ((nextWeek || inNextWeek) && mail.getDayOfWeek() == DayOfWeek.SUNDAY)
            return asked(said, "On a Sunday \"next week\" can be meant in two ways; please write the date.");
        if (nextWeek || inNextWeek) return forward(said, nextMonday().plusDays(weekday.getValue() - 1L));
        if (week.isPresent()) return forward(said, week.get().plusDays(weekday.getValue() - 1L));
        if (weekday == mail.getDayOfWeek())
            return asked(said, "Is it the day of your mail or a week later? Please write the date.");
        return forward(said, following(weekday));
    }

    /** Whether the van comes on a weekday within the week after the mail. */
    boolean delivers(int weekday) {
        return context.delivers().test(following(DayOfWeek.of(weekday)));
    }

    private Sense forward(Sense said, LocalDate day) {
        if (day.isBefore(latest))
            return asked(said, "The day goes back behind the one before it; please write the date.");
        return checked(said, day);
    }

    LocalDate nextMonday() {
        return mail.minusDays(mail.getDayOfWeek().getValue() - 1L).plusDays(7);
    }

    /** The first such weekday after the mail. */
    LocalDate following(DayOfWeek weekday) {
        LocalDate day = mail.plusDays(1);
        while (day.getDayOfWeek() != weekday) day = day.plusDays(1);
        return day;
    }

    /** A weekday with a date beside it. */
    Sense dated(Sense said, Optional<DayOfWeek> weekday, Optional<LocalDate> date) {
        if (date.isEmpty()) return asked(said, "This is no date we can place; please write the day and the month.");
        if (weekday.isPresent() && date.get().getDayOfWeek() != weekday.get()) return asked(said, APART);
        return checked(said, date.get());
    }

    Sense inDays(Sense said, int days) {
        if (days <= 0) return asked(said, LATE);
        return checked(said, mail.plusDays(days));
    }

    private Sense checked(Sense said, LocalDate day) {
        if (anyDay) return said.to(Kind.ON, day.toString());
        if (!day.isAfter(mail)) return asked(said, LATE);
        if (ChronoUnit.DAYS.between(mail, day) > FARTHEST_DAYS)
            return asked(said, "That day is far away; is it meant?");
        latest = day.isAfter(latest) ? day : latest;
        if (!context.delivers().test(day)) return asked(said, "Our van does not come to you on " + day + ".");
        return said.to(Kind.ON, day.toString());
    }

    static Sense asked(Sense said, String why) {
        return said.to(Kind.ON_ASKED, why);
    }

    /** A day of a month, in the year in which it is next. */
    Optional<LocalDate> monthDay(int month, int day) {
        try {
            LocalDate date = LocalDate.of(mail.getYear(), month, day);
            return Optional.of(date.isBefore(mail) ? LocalDate.of(mail.getYear() + 1, month, day) : date);
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** A day of the month alone: the next one. */
    Optional<LocalDate> dayOfMonth(int day) {
        for (int months = 0; months < 2; months++) {
            LocalDate first = mail.withDayOfMonth(1).plusMonths(months);
            if (day < 1 || day > first.lengthOfMonth()) continue;
            if (first.withDayOfMonth(day).isAfter(mail)) return Optional.of(first.withDayOfMonth(day));
        }
        return Optional.empty();
    }

    /** Figures as written: 2026-12-04, 12/4 (month first; day first only where it cannot be otherwise), 4.12. (day first). */
    Optional<LocalDate> figures(String written, Optional<DayOfWeek> weekday) {
        String[] parts = written.split("[-/.]");
        try {
            int first = Integer.parseInt(parts[0]);
            int second = Integer.parseInt(parts[1]);
            if (written.contains("-")) return Optional.of(LocalDate.of(first, second, Integer.parseInt(parts[2])));
            if (parts.length > 2)
                return withYear(List.of(first, second, Integer.parseInt(parts[2])), written.contains("."), weekday);
            if (written.contains(".") && !dayFirst && mayBeEither(first, second)) return Optional.empty();
            if (written.contains(".") || dayFirst) return dayFirst(first, second, weekday);
            return isOnlyDayFirst(first, second, weekday) ? monthDay(second, first) : monthFirst(first, second);
        } catch (DateTimeException | NumberFormatException | ArrayIndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    /** "Sat 5/12" in December: only with the day first it is a Saturday and near. */
    private boolean isOnlyDayFirst(int first, int second, Optional<DayOfWeek> weekday) {
        if (weekday.isEmpty() || first > 12 || second > 12) return false;
        Optional<LocalDate> read = monthDay(second, first).filter(day -> day.getDayOfWeek() == weekday.get());
        return isNear(read) && !isNear(monthDay(first, second));
    }

    /** "2.1." can be of January or of February, where both are near. */
    private boolean mayBeEither(int first, int second) {
        return first != second && isNear(monthDay(first, second)) && isNear(monthDay(second, first));
    }

    private boolean isNear(Optional<LocalDate> day) {
        return day.map(found -> ChronoUnit.DAYS.between(mail, found) <= FARTHEST_DAYS)
                .orElse(false);
    }

    private Optional<LocalDate> withYear(List<Integer> figures, boolean dots, Optional<DayOfWeek> weekday) {
        int first = figures.get(0);
        int second = figures.get(1);
        int year = figures.get(2) < 100 ? 2000 + figures.get(2) : figures.get(2);
        if (first > 12 || dots) return Optional.of(LocalDate.of(year, second, first));
        if (second > 12 || first == second) return Optional.of(LocalDate.of(year, first, second));
        List<LocalDate> fitting = Stream.of(LocalDate.of(year, second, first), LocalDate.of(year, first, second))
                .filter(day -> weekday.isPresent() && day.getDayOfWeek() == weekday.get())
                .toList();
        if (fitting.size() == 1) return Optional.of(fitting.get(0));
        return dayFirst ? Optional.empty() : Optional.of(LocalDate.of(year, first, second));
    }

    private Optional<LocalDate> monthFirst(int first, int second) {
        return first > 12 ? monthDay(second, first) : monthDay(first, second);
    }

    /** Where both could be the month, only a weekday that fits the day-first reading and not the other decides. */
    private Optional<LocalDate> dayFirst(int first, int second, Optional<DayOfWeek> weekday) {
        Optional<LocalDate> read = monthDay(second, first);
        if (first > 12 || first == second) return read;
        if (weekday.isEmpty() || read.isEmpty() || read.get().getDayOfWeek() != weekday.get()) return Optional.empty();
        boolean other = monthDay(first, second)
                .map(day -> day.getDayOfWeek() == weekday.get())
                .orElse(false);
        return other ? Optional.empty() : read;
    }
}
