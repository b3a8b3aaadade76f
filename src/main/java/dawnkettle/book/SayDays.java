package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the days of delivery in a line: puts one sense {@code ON} or {@code ON_ASKED} in place of the words of each. */
final class SayDays {
    /** A sense that has nothing to do with a quantity before it. */
    private static final Kind[] QUANTIFIED = {
        Kind.KIND,
        Kind.FORM,
        Kind.CASE,
        Kind.UNIT,
        Kind.TIMES,
        Kind.CODE,
        Kind.DOZEN,
        Kind.MEASURE,
        Kind.SIZE,
        Kind.MORE
    };

    /** Beyond it "Fri 1 kit" is hardly the first of a month. */
    private static final int SOON = 14;

    private final DaysSaid days;
    private final List<Sense> line;
    private final List<Sense> found = new ArrayList<>();
    private int at;

    private SayDays(DaysSaid days, List<Sense> line) {
        this.days = days;
        this.line = line;
    }

    static List<Sense> in(List<Sense> line, DaysSaid days) {
        SayDays say = new SayDays(days, line);
        while (say.at < line.size()) say.step();
        return say.found;
    }

    private Sense sense(int index) {
        return index >= 0 && index < line.size() ? line.get(index) : new Sense(Kind.STOP, "end", 0, 0);
    }

    private boolean is(int index, Kind... kinds) {
        return sense(index).is(kinds);
    }

    private void step() {
        if (is(at, Kind.SAME_AS)) sameAs();
        else if (is(at, Kind.NEXT, Kind.THIS) && is(at + 1, Kind.WEEKDAY)) thisOrNext();
        else if (is(at, Kind.NEXT_WEEK) && is(at + 1, Kind.WEEKDAY)) put(at + 1, days.weekday(sense(at + 1), true));
        else if (is(at, Kind.LAST) && is(at + 1, Kind.WEEKDAY)) past(at + 1);
        else if (is(at, Kind.WEEKDAY)) weekday();
        else if (is(at, Kind.DAY)) put(at, days.inDays(sense(at), sense(at).figure()));
        else if (!date(at, Optional.empty())) {
            found.add(is(at, Kind.MONTH) ? sense(at).to(Kind.UNKNOWN, "") : sense(at));
            at++;
        }
    }

    /** Puts a day in place of everything from here to {@code last}. */
    private void put(int last, Sense day) {
        found.add(sense(at).through(sense(last), day.kind(), day.value()));
        at = last + 1;
    }

    private void past(int last) {
        put(last, DaysSaid.asked(sense(at), "That day is over; which day is meant?"));
    }

    private void thisOrNext() {
        boolean next = is(at, Kind.NEXT);
        Sense weekday = sense(at + 1);
        if (next)
            put(at + 1, DaysSaid.asked(weekday, "\"Next\" can be this week or the one after; please write the date."));
        else {
            at++;
            weekday();
        }
    }

    private void weekday() {
        if (is(at + 1, Kind.LAST)) past(at + 1);
        else if (is(at + 1, Kind.NEXT))
            put(at + 1, DaysSaid.asked(sense(at), "Which week is meant? Please write the date."));
        else if (is(at + 1, Kind.NEXT_WEEK)) put(at + 1, days.weekday(sense(at), true));
        else {
            int next = at + 1;
            while (is(next, Kind.COMMA, Kind.BRACKET, Kind.STOP, Kind.NOISE) && next - at < 4 && next < line.size())
                next++;
            if (next < line.size()
                    && date(next, Optional.of(DayOfWeek.of(sense(at).figure())))) return;
            if (is(at + 1, Kind.NUMBER) && bareNumber()) return;
            put(isShortened() ? at + 1 : at, days.weekday(sense(at), false));
        }
    }

    /** "Thur." with its dot. */
    private boolean isShortened() {
        return is(at + 1, Kind.STOP)
                && at + 2 < line.size()
                && sense(at).until() - sense(at).from() <= 5
                && sense(at + 1).from() == sense(at).until();
    }

    /** "Mon 14": a date, or fourteen packs? @return whether the figure was taken */
    private boolean bareNumber() {
        Sense number = sense(at + 1);
        if (!number.value().matches("\\d{1,2}") || number.until() - number.from() > 2) return false;
        DayOfWeek weekday = DayOfWeek.of(sense(at).figure());
        Optional<LocalDate> date = days.dayOfMonth(number.figure());
        boolean fits = date.map(day -> day.getDayOfWeek() == weekday).orElse(false);
        boolean soon =
                date.map(day -> !day.isAfter(days.mailDay().plusDays(SOON))).orElse(false);
        boolean quantity = is(at + 2, QUANTIFIED) || is(at + 2, Kind.NOISE) && is(at + 3, QUANTIFIED);
        if (quantity && !(fits && soon)) return false;
        if (quantity)
            put(
                    at + 1,
                    DaysSaid.asked(sense(at), "Is " + number.value() + " the date or the packs? Please write both."));
        else put(at + 1, days.dated(sense(at), Optional.of(weekday), date));
        return true;
    }

    /** A date in figures or with a month or an ending. @return whether there is one at {@code from} */
    private boolean date(int from, Optional<DayOfWeek> weekday) {
        if (is(from, Kind.DATE) && !is(from + 1, Kind.CASE, Kind.MEASURE))
            return dated(
                    from,
                    weekday,
                    days.figures(sense(from).value(), weekday(from + 1).or(() -> weekday)));
        if (is(from, Kind.NUMBER) && weekday.isPresent() && sense(from).value().matches("\\d{1,2}\\.\\d{1,2}"))
            return dated(from, weekday, days.figures(sense(from).value() + ".", weekday));
        if (is(from, Kind.NUMBER, Kind.ORDINAL) && sense(from).value().matches("\\d{1,2}")) {
            int month = is(from + 1, Kind.NOISE) ? from + 2 : from + 1;
            if (is(month, Kind.MONTH) && written(from)) return dayThenMonth(from, month, weekday);
            if (is(from, Kind.ORDINAL))
                return dated(from, weekday, days.dayOfMonth(sense(from).figure()));
        }
        if (!is(from, Kind.MONTH)) return false;
        int day = is(from + 1, Kind.STOP) || is(from + 1, Kind.NOISE) ? from + 2 : from + 1;
        if (!is(day, Kind.NUMBER, Kind.ORDINAL) || !sense(day).value().matches("\\d{1,2}")) return false;
        return dated(
                day, weekday, days.monthDay(sense(from).figure(), sense(day).figure()));
    }

    private boolean written(int from) {
        return is(from, Kind.ORDINAL) || sense(from).until() - sense(from).from() <= 2;
    }

    private boolean dayThenMonth(int from, int month, Optional<DayOfWeek> weekday) {
        Optional<LocalDate> date =
                days.monthDay(sense(month).figure(), sense(from).figure());
        int last = is(month + 1, Kind.STOP) && month + 2 < line.size() ? month + 1 : month;
        boolean another = is(last + 1, Kind.NUMBER) && sense(last + 1).value().matches("\\d{1,2}");
        boolean certain = !another
                || is(from, Kind.ORDINAL)
                || date.map(d -> weekday.filter(w -> w == d.getDayOfWeek()).isPresent())
                        .orElse(false);
        return dated(last, weekday, certain ? date : Optional.empty());
    }

    private Optional<DayOfWeek> weekday(int index) {
        int after = is(index, Kind.BRACKET, Kind.COMMA) ? index + 1 : index;
        return is(after, Kind.WEEKDAY) ? Optional.of(DayOfWeek.of(sense(after).figure())) : Optional.empty();
    }

    /** Ends a date at {@code last}, with a year or a weekday behind it. */
    private boolean dated(int last, Optional<DayOfWeek> weekday, Optional<LocalDate> date) {
        int end = last;
        int year = is(end + 1, Kind.COMMA) ? end + 2 : end + 1;
        if (is(year, Kind.NUMBER) && sense(year).value().matches("20\\d\\d")) end = year;
        boolean otherYear = end == year
                && date.map(d -> d.getYear() != sense(year).figure()).orElse(true);
        Optional<DayOfWeek> behind = weekday(end + 1);
        if (weekday.isEmpty() && behind.isPresent()) end = is(end + 1, Kind.WEEKDAY) ? end + 1 : end + 2;
        put(end, days.dated(sense(at), weekday.or(() -> behind), otherYear ? Optional.empty() : date));
        return true;
    }

    /** "Same as last week", "same as last Friday", "same as Thursday 10th". */
    private void sameAs() {
        int next = at + 1;
        while (is(next, Kind.NOISE) && next < line.size()) next++;
        LocalDate mail = days.mailDay();
        if (is(next, Kind.LAST_WEEK)) put(next, sense(at).to(Kind.SAME_AS, "week"));
        else if (is(next, Kind.LAST) && is(next + 1, Kind.WEEKDAY)) put(next + 1, last(sense(next + 1), mail));
        else if (is(next, Kind.WEEKDAY) && is(next + 1, Kind.LAST)) put(next + 1, last(sense(next), mail));
        else if (is(next, Kind.WEEKDAY) && dateNearby(next, mail)) return;
        else put(at, sense(at));
    }

    /** The last such weekday, where no other can be meant: one of the week before the mail's. */
    private Sense last(Sense weekday, LocalDate mail) {
        LocalDate day = mail.minusDays(1);
        while (day.getDayOfWeek() != DayOfWeek.of(weekday.figure())) day = day.minusDays(1);
        boolean weekBefore = day.isBefore(days.nextMonday().minusDays(7));
        return sense(at).to(Kind.SAME_AS, weekBefore ? day.toString() : "");
    }

    private boolean dateNearby(int weekday, LocalDate mail) {
        int day = is(weekday + 1, Kind.NOISE) ? weekday + 2 : weekday + 1;
        if (!is(day, Kind.ORDINAL, Kind.NUMBER) || !sense(day).value().matches("\\d{1,2}")) return false;
        List<LocalDate> fitting = new ArrayList<>();
        for (LocalDate d = mail.minusDays(20); d.isBefore(mail.plusDays(20)); d = d.plusDays(1))
            if (d.getDayOfMonth() == sense(day).figure()
                    && d.getDayOfWeek().getValue() == sense(weekday).figure()) fitting.add(d);
        put(day, sense(at).to(Kind.SAME_AS, fitting.size() == 1 ? fitting.get(0).toString() : ""));
        return true;
    }
}
