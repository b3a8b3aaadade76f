package dawnkettle.stock;

import dawnkettle.book.Nearest;
import dawnkettle.shop.Crew;
import dawnkettle.shop.Opening;
import dawnkettle.shop.WorkStation;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The words of records about the workroom: who is away, what is down, and what is up again. */
final class RoomWords {
    private static final String TIME = "([01]?[0-9]|2[0-3]):[0-5][0-9]";
    private static final String LIKE_TIME = "[0-9]{1,2}([:.h][0-9]*)?|now|end";
    private static final String LIKE_DAY = "[0-9]{4}-[0-9-]*";

    /** Which word says from when. */
    private static final int FROM = 2;

    private final FactWords words;
    private final Desk desk;
    private final Instant at;

    RoomWords(FactWords words, Desk desk, Instant at) {
        this.words = words;
        this.desk = desk;
        this.at = at;
    }

    Optional<Fact> fact(String kind) {
        return switch (kind) {
            case "away" -> away();
            case "down" -> down();
            default -> up();
        };
    }

    /** A stretch of a making day. */
    private record Stretch(LocalDate day, LocalTime from, LocalTime until) {
        boolean meets(Opening opening) {
            return opening.from().isBefore(until) && from.isBefore(opening.until());
        }
    }

    private Optional<Fact> away() {
        words.expect(4, Integer.MAX_VALUE, "record away HANDS FROM UNTIL [DAY] [WHY]");
        Optional<Integer> halves = halves();
        List<Opening> open =
                desk.shop().floor().crews().stream().map(Crew::opening).toList();
        Optional<LocalTime> until = time(3, open);
        int next = 4;
        Optional<Stretch> stretch = stretch(from(), until, isDay(next) ? next++ : -1);
        if (halves.isEmpty() || stretch.isEmpty() || !isThere(halves.get(), stretch.get(), open))
            return Optional.empty();
        return Optional.of(new Fact.Away(
                stretch.get().day(), halves.get(), from(stretch.get()), until(stretch.get()), words.rest(next)));
    }

    private Optional<Integer> halves() {
        String word = words.at(1);
        if (word.matches("[0-9]{1,2}(\\.[05])?")) {
            int halves = new BigDecimal(word).multiply(BigDecimal.valueOf(2)).intValue();
            if (halves > 0) return Optional.of(halves);
        }
        words.complain(
                1,
                "hands " + words.quoted(1) + " are not people, whole or half",
                "write how many are away, as 1 or 0.5");
        return Optional.empty();
    }

    private boolean isThere(int halves, Stretch stretch, List<Opening> open) {
        int most = desk.shop().floor().crews().stream()
                .filter(crew -> stretch.meets(crew.opening()))
                .mapToInt(Crew::halfHands)
                .max()
                .orElse(0);
        if (most == 0)
            words.complain(
                    2,
                    "nobody is at work from " + stretch.from() + " to " + stretch.until(),
                    "the crew is there " + told(open));
        else if (halves > most)
            words.complain(
                    1,
                    "hands " + words.quoted(1) + " are more than the " + people(most) + " that are there from "
                            + stretch.from() + " to " + stretch.until(),
                    "write how many of them are away");
        return halves <= most;
    }

    private Optional<Fact> down() {
        words.expect(3, Integer.MAX_VALUE, "record down STATION FROM [UNTIL] [DAY] [WHY]");
        Optional<WorkStation> station = station();
        List<Opening> open = station.map(WorkStation::openings).orElse(List.of());
        int next = 3;
        Optional<LocalTime> until =
                words.at(next).matches(LIKE_TIME) ? time(next++, open) : station.map(one -> last(open));
        Optional<Stretch> stretch = stretch(from(), until, isDay(next) ? next++ : -1);
        if (station.isEmpty() || stretch.isEmpty() || !isOpen(station.get(), stretch.get())) return Optional.empty();
        return Optional.of(new Fact.Down(
                stretch.get().day(),
                station.get().code(),
                from(stretch.get()),
                until(stretch.get()),
                words.rest(next)));
    }

    private boolean isOpen(WorkStation station, Stretch stretch) {
        boolean open = station.openings().stream().anyMatch(stretch::meets);
        if (!open)
            words.complain(
                    2,
                    station.code() + " is not in use from " + stretch.from() + " to " + stretch.until(),
                    "it is open " + told(station.openings()));
        return open;
    }

    /** Ends the stretch of the last record that put the station down and that is not over. */
    private Optional<Fact> up() {
        words.expect(2, 3, "record up STATION [TIME]");
        Optional<WorkStation> station = station();
        Optional<LocalTime> time = words.size() > FROM ? from() : Optional.of(now());
        if (station.isEmpty() || time.isEmpty()) return Optional.empty();
        Optional<Fact.Down> stands = desk.lots().past().down().stream()
                .filter(down -> down.station().equals(station.get().code()))
                .filter(down -> instant(down.productionDate(), time.get()).isBefore(down.until()))
                .filter(down -> instant(down.productionDate(), time.get()).isAfter(down.from()))
                .reduce((earlier, later) -> later);
        if (stands.isEmpty())
            words.complain(
                    1,
                    words.quoted(1) + " is not down at " + time.get(),
                    "there is nothing to take back; a wrong record is taken back with: record cancel NUMBER WHY");
        return stands.map(
                down -> new Fact.Up(down.productionDate(), down.station(), instant(down.productionDate(), time.get())));
    }

    private Optional<WorkStation> station() {
        List<WorkStation> all = desk.shop().floor().stations();
        Optional<WorkStation> station = all.stream()
                .filter(one -> one.code().equalsIgnoreCase(words.at(1)))
                .findFirst();
        List<String> codes = all.stream().map(WorkStation::code).toList();
        if (station.isEmpty())
            words.complain(
                    1,
                    "there is no station " + words.quoted(1),
                    Nearest.to(words.at(1), codes)
                            .map(near -> "did you mean \"" + near + "\"?")
                            .orElse("write one of " + String.join(", ", codes)));
        return station;
    }

    private Optional<LocalTime> from() {
        return time(FROM, List.of());
    }

    /** @param open when the work goes on, for the word "end" */
    private Optional<LocalTime> time(int place, List<Opening> open) {
        String word = words.at(place);
        if (word.equals("now")) return Optional.of(now());
        if (word.equals("end") && !open.isEmpty()) return Optional.of(last(open));
        if (word.matches(TIME)) return Optional.of(LocalTime.parse(word.length() < 5 ? "0" + word : word));
        if (!word.equals("end") || place == FROM)
            words.complain(
                    place,
                    "time " + words.quoted(place) + " is not a time of the day",
                    "write hours and minutes, as 05:30");
        return Optional.empty();
    }

    private LocalTime now() {
        return LocalTime.ofInstant(at, desk.zone()).truncatedTo(ChronoUnit.MINUTES);
    }

    private static LocalTime last(List<Opening> open) {
        return open.stream().map(Opening::until).max(Comparator.naturalOrder()).orElse(LocalTime.MAX);
    }

    private boolean isDay(int place) {
        return words.at(place).matches(LIKE_DAY);
    }

    /** @param dayAt which word is the day; below zero for the next time that the stretch comes */
    private Optional<Stretch> stretch(Optional<LocalTime> from, Optional<LocalTime> until, int dayAt) {
        if (from.isEmpty() || until.isEmpty()) return Optional.empty();
        if (!from.get().isBefore(until.get())) {
            words.complain(
                    2,
                    "from " + from.get() + " to " + until.get() + " runs backward",
                    "write when it begins, then when it ends");
            return Optional.empty();
        }
        Optional<LocalDate> day = dayAt < 0 ? Optional.of(next(until.get())) : day(dayAt, until.get());
        return day.filter(any -> isOnTheClock(any, from.get()) & isOnTheClock(any, until.get()))
                .map(one -> new Stretch(one, from.get(), until.get()));
    }

    private LocalDate next(LocalTime until) {
        LocalDate today = LocalDate.ofInstant(at, desk.zone());
        boolean isToday =
                desk.shop().calendar().isWorkDay(today) && instant(today, until).isAfter(at);
        return isToday ? today : desk.shop().calendar().next(today);
    }

    private Optional<LocalDate> day(int place, LocalTime until) {
        Optional<LocalDate> day = desk.admission().findDay(words.at(place));
        if (day.isEmpty())
            words.complain(
                    place, "date " + words.quoted(place) + " is not a day", "write year-month-day, as " + desk.today());
        else if (!desk.shop().calendar().isWorkDay(day.get()))
            words.complain(
                    place,
                    "nothing is made on " + words.quoted(place),
                    "write a making day, as " + desk.shop().calendar().next(desk.today()));
        else if (!instant(day.get(), until).isAfter(at))
            words.complain(
                    place,
                    words.quoted(place) + " until " + until + " is over",
                    "record it before it is over: no plan can change it any more");
        else return day;
        return Optional.empty();
    }

    private boolean isOnTheClock(LocalDate day, LocalTime time) {
        boolean there =
                !desk.zone().getRules().getValidOffsets(day.atTime(time)).isEmpty();
        if (!there)
            words.complain(2, "the clocks jump over " + time + " on " + day, "write a time that the clock shows");
        return there;
    }

    private Instant instant(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(desk.zone()).toInstant();
    }

    private Instant from(Stretch stretch) {
        return instant(stretch.day(), stretch.from());
    }

    private Instant until(Stretch stretch) {
        return instant(stretch.day(), stretch.until());
    }

    private static String told(List<Opening> open) {
        return open.stream().map(one -> one.from() + "-" + one.until()).collect(Collectors.joining(", "));
    }

    private static String people(int halves) {
        return BigDecimal.valueOf(halves)
                .divide(BigDecimal.valueOf(2))
                .stripTrailingZeros()
                .toPlainString();
    }
}
