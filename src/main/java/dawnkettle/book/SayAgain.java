package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which day "same as" means.
 *
 * @param day a date; "week", "last 5", "this 5" or "the 5", which depend on the day it is wished for; empty where it is not certain
 * @param last where its words end
 */
record SayAgain(String day, int last) {
    private static final Sense END = new Sense(Kind.STOP, "end", 0, 0);

    /** To both sides of the mail's day: below a month, so that a day of the month is found at most twice. */
    private static final int NEARBY_DAYS = 20;

    static SayAgain of(List<Sense> line, int at, DaysSaid days) {
        int next = at + 1;
        while (sense(line, next).is(Kind.NOISE)) next++;
        Sense first = sense(line, next);
        Sense second = sense(line, next + 1);
        if (first.is(Kind.LAST_WEEK)) return new SayAgain("week", next);
        if (first.is(Kind.LAST) && second.is(Kind.WEEKDAY)) return new SayAgain("last " + second.value(), next + 1);
        if (first.is(Kind.THIS) && second.is(Kind.WEEKDAY)) return new SayAgain("this " + second.value(), next + 1);
        if (first.is(Kind.WEEKDAY) && second.is(Kind.LAST)) return new SayAgain("last " + first.value(), next + 1);
        if (first.is(Kind.DAY) && first.figure() <= 0)
            return new SayAgain(days.mailDay().plusDays(first.figure()).toString(), next);
        if (!first.is(Kind.WEEKDAY)) return new SayAgain("", at);
        int day = second.is(Kind.NOISE) ? next + 2 : next + 1;
        boolean dated = sense(line, day).is(Kind.ORDINAL, Kind.NUMBER)
                && sense(line, day).value().matches("\\d{1,2}");
        return dated
                ? new SayAgain(nearby(sense(line, day).figure(), first.figure(), days.mailDay()), day)
                : new SayAgain("the " + first.value(), next);
    }

    private static Sense sense(List<Sense> line, int index) {
        return index < line.size() ? line.get(index) : END;
    }

    private static String nearby(int dayOfMonth, int weekday, LocalDate mail) {
        List<LocalDate> fitting = new ArrayList<>();
        for (LocalDate d = mail.minusDays(NEARBY_DAYS); d.isBefore(mail.plusDays(NEARBY_DAYS)); d = d.plusDays(1))
            if (d.getDayOfMonth() == dayOfMonth && d.getDayOfWeek().getValue() == weekday) fitting.add(d);
        return fitting.size() == 1 ? fitting.get(0).toString() : "";
    }

    /** The day that is like another, wished for on one and written on the day of the mail; empty where it is not certain. */
    static Optional<LocalDate> resolved(String as, LocalDate wished, LocalDate mail) {
        if (as.isEmpty()) return Optional.empty();
        if (as.equals("week")) return past(wished.minusDays(7), mail);
        if (Character.isDigit(as.charAt(0))) return Optional.of(LocalDate.parse(as));
        int weekday = Integer.parseInt(as.substring(as.length() - 1));
        LocalDate before = back(mail, weekday, as.startsWith("last"));
        LocalDate monday = mail.minusDays(mail.getDayOfWeek().getValue() - 1L);
        if (as.startsWith("last")) {
            if (wished.getDayOfWeek().getValue() == weekday
                    && wished.minusDays(7).equals(before)) return Optional.of(before);
            return before.isBefore(monday) ? Optional.of(before) : Optional.empty();
        }
        LocalDate after = before.plusDays(7);
        boolean onlyBehind = !after.isBefore(wished);
        boolean within = !as.startsWith("this") || !before.isBefore(monday);
        return onlyBehind && within ? Optional.of(before) : Optional.empty();
    }

    private static LocalDate back(LocalDate mail, int weekday, boolean past) {
        LocalDate day = past ? mail.minusDays(1) : mail;
        while (day.getDayOfWeek().getValue() != weekday) day = day.minusDays(1);
        return day;
    }

    private static Optional<LocalDate> past(LocalDate day, LocalDate mail) {
        return day.isBefore(mail) ? Optional.of(day) : Optional.empty();
    }
}
