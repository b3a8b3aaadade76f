package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Finds the days of delivery in a line: puts one sense {@code ON} or {@code ON_ASKED} in place of the words of each. */
final class SayDays {
    /** Beyond it "Fri 1 kit" is hardly the first of a month. */
    private static final int SOON = 14;

    private final DaysSaid days;
    private final DayWords line;
    private final List<Sense> found = new ArrayList<>();
    private int at;

    private SayDays(DaysSaid days, List<Sense> line) {
        this.days = days;
        this.line = new DayWords(line);
    }

    static List<Sense> in(List<Sense> line, DaysSaid days) {
        SayDays say = new SayDays(days, line);
        while (say.at < line.size()) say.step();
        return say.found;
    }

    private Sense sense(int index) {
        return line.sense(index);
    }

    private boolean is(int index, Kind... kinds) {
        return line.is(index, kinds);
    }

    private void step() {
        if (is(at, Kind.SAME_AS)) sameAs();
        else if (is(at, Kind.WEEK_OF)) weekOf();
        else if (is(at, Kind.BEGUN)) begun();
        else if (is(at, Kind.ORDINAL) && line.isWord(at) && !line.isDayWord(at)) strange();
        else if (is(at, Kind.NEXT, Kind.THIS) && is(at + 1, Kind.WEEKDAY)) thisOrNext();
        else if (is(at, Kind.NEXT_WEEK) && is(at + 1, Kind.WEEKDAY)) put(at + 1, days.weekday(sense(at + 1), true));
        else if (is(at, Kind.LAST) && is(at + 1, Kind.WEEKDAY)) past(at + 1);
        else if (is(at, Kind.WEEKDAY)) weekday();
        else if (is(at, Kind.DAY)) day();
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

    /** A sense of its own that is no day. */
    private void strange() {
        found.add(sense(at).to(Kind.UNKNOWN, ""));
        at++;
    }

    /** "Same as last week", "same as last Friday": the day it is like, as {@link SayAgain} has it. */
    private void sameAs() {
        SayAgain again = SayAgain.of(line.senses(), at, days);
        found.add(sense(at).through(sense(again.last()), Kind.SAME_AS, again.day()));
        at = again.last() + 1;
    }

    /** "Week of 21 December": weekdays from here on are of that week. */
    private void weekOf() {
        int said = found.size();
        at++;
        while (is(at, Kind.NOISE)) at++;
        days.takeAnyDay(true);
        boolean dated =
                date(at, Optional.empty()) && found.get(found.size() - 1).is(Kind.ON);
        days.takeAnyDay(false);
        if (dated) days.moveToWeekOf(LocalDate.parse(found.get(found.size() - 1).value()));
        Sense week = found.size() > said ? found.remove(found.size() - 1) : sense(at - 1);
        found.add(
                dated ? week.to(Kind.NOISE, "") : DaysSaid.asked(week, "Which week is meant? Please write the dates."));
    }

    /** "Mo 7", "W 9 Dec": the beginning of a weekday before a date that agrees with it. */
    private void begun() {
        int before = found.size();
        Sense begun = sense(at);
        if (is(at + 1, Kind.COLON)) {
            lettered();
            return;
        }
        boolean dated =
                date(at + 1, Optional.empty()) || is(at + 1, Kind.NUMBER) && is(at + 2, Kind.COLON) && bareDate(at + 1);
        if (!dated) strange();
        else if (found.get(before).is(Kind.ON)) {
            int weekday =
                    LocalDate.parse(found.get(before).value()).getDayOfWeek().getValue();
            if (!begun.value().contains(String.valueOf(weekday)))
                found.set(before, DaysSaid.asked(begun, DaysSaid.APART));
        }
    }

    /** "W: 6 firm": the only weekday that begins so and on which the van comes. */
    private void lettered() {
        List<Integer> fitting = sense(at)
                .value()
                .chars()
                .map(Character::getNumericValue)
                .filter(days::delivers)
                .boxed()
                .toList();
        if (fitting.size() != 1) strange();
        else put(at, days.weekday(sense(at).to(Kind.WEEKDAY, String.valueOf(fitting.get(0))), false));
    }

    private boolean bareDate(int number) {
        if (!sense(number).value().matches("\\d{1,2}")) return false;
        put(
                number,
                days.dated(
                        sense(at),
                        Optional.empty(),
                        days.dayOfMonth(sense(number).figure())));
        return true;
    }

    /** "Tomorrow (Friday)", "tomorrow, the 4th": both name one day, or neither is certain. */
    private void day() {
        int here = at;
        Sense relative = sense(at);
        LocalDate meant = days.mailDay().plusDays(relative.figure());
        int next = at + 1;
        while (is(next, Kind.COMMA, Kind.BRACKET, Kind.DASH, Kind.NOISE) && next - at < 3) next++;
        boolean weekday = is(next, Kind.WEEKDAY);
        LocalDate said = days.latest();
        boolean dated = !weekday && next > at && line.isDate(next);
        if (weekday && sense(next).figure() != meant.getDayOfWeek().getValue())
            put(next, DaysSaid.asked(relative, DaysSaid.APART));
        else if (weekday && date(next, Optional.of(meant.getDayOfWeek()))) agree(here, meant);
        else if (weekday && isDateBehind(next)) {
            date(behind(next), Optional.of(meant.getDayOfWeek()));
            agree(here, meant);
        } else if (dated && date(next, Optional.empty())) agree(here, meant);
        else {
            days.backTo(said);
            put(weekday ? next : at, days.inDays(relative, relative.figure()));
        }
    }

    private int behind(int weekday) {
        int next = weekday + 1;
        while (is(next, Kind.COMMA, Kind.NOISE) && next - weekday < 3) next++;
        return next;
    }

    private boolean isDateBehind(int weekday) {
        return line.isDate(behind(weekday));
    }

    private void agree(int here, LocalDate meant) {
        Sense last = found.get(found.size() - 1);
        if (last.is(Kind.ON) && !last.value().equals(meant.toString()))
            found.set(found.size() - 1, DaysSaid.asked(sense(here).through(last, Kind.ON, ""), DaysSaid.APART));
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
        if (is(at + 1, Kind.UNSURE) && sense(at + 1).value().equals("week"))
            put(at + 1, DaysSaid.asked(sense(at), "Which week is meant? Please write the date."));
        else if (is(at + 1, Kind.LAST)) past(at + 1);
        else if (is(at + 1, Kind.NEXT))
            put(at + 1, DaysSaid.asked(sense(at), "Which week is meant? Please write the date."));
        else if (is(at + 1, Kind.NEXT_WEEK)) put(at + 1, days.weekday(sense(at), true));
        else if (is(at + 1, Kind.UNSURE) && is(at + 2, Kind.COLON)) put(at + 1, days.weekday(sense(at), false));
        else {
            int next = at + 1;
            while (is(next, Kind.COMMA, Kind.BRACKET, Kind.STOP, Kind.NOISE) && next - at < 4 && next < line.size())
                next++;
            if (next < line.size()
                    && date(next, Optional.of(DayOfWeek.of(sense(at).figure())))) return;
            if (is(at + 1, Kind.NUMBER) && bareNumber()) return;
            put(at, days.weekday(sense(at), false));
        }
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
        boolean part = is(at + 2, Kind.NOISE) && sense(at + 2).value().startsWith("of");
        boolean quantity =
                part || is(at + 2, DayWords.QUANTIFIED) || is(at + 2, Kind.NOISE) && is(at + 3, DayWords.QUANTIFIED);
        if (quantity && (line.countsWithOthers(at + 1) || line.isAloneWithProduct(at + 1))) return false;
        if (!fits && line.isOneProductByDays()) return false;
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
            boolean dotted = is(from, Kind.NUMBER) && is(from + 1, Kind.STOP) && is(from + 2, Kind.MONTH);
            if (dotted && sense(from + 1).until() == sense(from + 2).from())
                return dayThenMonth(from, from + 2, weekday);
            int month = is(from + 1, Kind.NOISE) && sense(from + 1).value().equals("of") ? from + 2 : from + 1;
            if (is(month, Kind.MONTH) && line.written(from)) return dayThenMonth(from, month, weekday);
            if (is(from, Kind.ORDINAL) && !is(from + 1, Kind.FORM, Kind.CASE, Kind.UNIT))
                return dated(from, weekday, days.dayOfMonth(sense(from).figure()));
        }
        if (!is(from, Kind.MONTH)) return false;
        int day = is(from + 1, Kind.STOP) || is(from + 1, Kind.NOISE) ? from + 2 : from + 1;
        if (!is(day, Kind.NUMBER, Kind.ORDINAL) || !sense(day).value().matches("\\d{1,2}")) return false;
        return dated(
                day, weekday, days.monthDay(sense(from).figure(), sense(day).figure()));
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
}
