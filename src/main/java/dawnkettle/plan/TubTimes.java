package dawnkettle.plan;

import dawnkettle.measure.Celsius;
import dawnkettle.shop.Floor;
import dawnkettle.shop.Presence;
import dawnkettle.shop.ShopCalendar;
import dawnkettle.shop.Tub;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** When a tub may be filled so that its beans are ready, and not over-soaked, at the minutes they are wanted. */
final class TubTimes {
    /** Fillings start on minutes that are easy to read off a clock, and never two at once. */
    private static final int GRID_MINUTES = 5;

    /** From the sheet's printing to the first filling. */
    static final int HEAD_START_MINUTES = 10;

    /** Beans that are ready this long before the grind forgive a slow soak, and let the close choose another order. */
    private static final int MARGIN_MINUTES = 90;

    /** Farther back than this no filling is looked for. */
    private static final int DAYS_BACK = 4;

    private final SoakBeliefs beliefs;
    private final Map<String, TubTimes> groups = new HashMap<>();
    private final SoakLaw law;
    private final Temperatures temperatures;
    private final DayClock clock;
    private final List<Integer> fills;
    private final Map<String, SoakLaw.Course> courses = new HashMap<>();

    TubTimes(SoakBeliefs beliefs, Temperatures temperatures, DayClock clock, List<Integer> fills) {
        this.beliefs = beliefs;
        this.law = beliefs.otherwise().law();
        this.temperatures = temperatures;
        this.clock = clock;
        this.fills = fills;
    }

    /** The times of beans that soak as those of a group do. */
    TubTimes of(String soakGroup) {
        SoakBelief own = beliefs.of(soakGroup);
        return own.law().equals(law)
                ? this
                : groups.computeIfAbsent(
                        soakGroup, any -> new TubTimes(SoakBeliefs.all(own), temperatures, clock, fills));
    }

    /** Minutes of {@code clock} at which somebody is there to fill a tub, from {@code earliest} on. */
    static List<Integer> fillMinutes(Floor floor, ShopCalendar calendar, DayClock clock, int earliest) {
        List<Integer> fills = new ArrayList<>();
        for (DayFloor.Span span : presence(floor, calendar, clock)) {
            int until = clock.minute(span.until());
            int from = Math.max(clock.minute(span.from()), earliest);
            for (int minute = roundUp(from); minute < until; minute += GRID_MINUTES) fills.add(minute);
        }
        return fills;
    }

    private static int roundUp(int minute) {
        return -Math.floorDiv(-minute, GRID_MINUTES) * GRID_MINUTES;
    }

    /** When somebody is there, from some days before the production day to its end. */
    static List<DayFloor.Span> presence(Floor floor, ShopCalendar calendar, DayClock clock) {
        List<DayFloor.Span> spans = new ArrayList<>();
        for (LocalDate day = clock.day().minusDays(DAYS_BACK); !day.isAfter(clock.day()); day = day.plusDays(1))
            for (Presence presence : floor.presence())
                if (holds(presence, calendar, day))
                    spans.add(new DayFloor.Span(
                            day.atTime(presence.opening().from())
                                    .atZone(clock.zone())
                                    .toInstant(),
                            day.atTime(presence.opening().until())
                                    .atZone(clock.zone())
                                    .toInstant()));
        return spans;
    }

    private static boolean holds(Presence presence, ShopCalendar calendar, LocalDate day) {
        if (!presence.days().contains(day.getDayOfWeek())) return false;
        return presence.onClosedDays() || !calendar.closed().containsKey(day);
    }

    /** The first minute by which any tub can be ready, with water as warm as is allowed; empty when nobody is there. */
    Optional<Integer> earliestReady(Tub tub) {
        return fills.stream()
                .min(Integer::compare)
                .map(fill -> waters(tub).stream()
                        .mapToInt(water -> fill + course(tub, water).readyMinutes())
                        .min()
                        .orElseThrow());
    }

    /** A tub filled as soon as anybody can, and when its beans are ready. */
    record Soonest(Celsius water, int fill, SoakLaw.Course course) {
        int ready() {
            return fill + course.readyMinutes();
        }
    }

    /** With the tap's water; empty when nobody is there. */
    Optional<Soonest> soonestByTap(Tub tub) {
        Celsius tap = temperatures.tap();
        return fills.stream().min(Integer::compare).map(fill -> new Soonest(tap, fill, course(tub, tap)));
    }

    /** With water as warm as is allowed; of two that are as quick the cooler. */
    Optional<Soonest> soonestWarmed(Tub tub) {
        return fills.stream()
                .min(Integer::compare)
                .flatMap(fill -> waters(tub).stream()
                        .map(water -> new Soonest(water, fill, course(tub, water)))
                        .min(Comparator.comparingInt(Soonest::ready).thenComparing(Soonest::water)));
    }

    /**
     * The filling for beans whose first grind is at {@code first} and whose last is at {@code last}: tap water where that
     * serves, otherwise the coolest that does; where none is ready in time, the one that delays least.
     */
    Optional<TubDraft.Filling> filling(Tub tub, int first, int last, Window window) {
        Optional<TubDraft.Filling> soonest = Optional.empty();
        for (Celsius water : waters(tub)) {
            SoakLaw.Course course = course(tub, water);
            int spread = last - first;
            if (course.windowMinutes() < spread) continue;
            int margin = Math.min(MARGIN_MINUTES, (course.windowMinutes() - spread) / 2);
            Optional<TubDraft.Filling> inTime = best(course, water, first, margin, window);
            if (inTime.isPresent()
                    && inTime.get().ready() <= first
                    && inTime.get().latest() >= last) return inTime;
            Optional<TubDraft.Filling> late = earliest(course, water, first, window);
            if (late.isPresent()
                    && (soonest.isEmpty() || late.get().ready() < soonest.get().ready())) soonest = late;
        }
        return soonest;
    }

    /** Which fillings are still open: none before {@code from}, none at a minute that is {@code taken}. */
    record Window(int from, List<Integer> taken) {
        boolean allows(int fill) {
            return fill >= from && !taken.contains(fill);
        }
    }

    private Optional<TubDraft.Filling> best(
            SoakLaw.Course course, Celsius water, int first, int margin, Window window) {
        int wanted = first - margin - course.readyMinutes();
        Optional<Integer> chosen = Optional.empty();
        for (int fill : fills) {
            if (!window.allows(fill) || fill + course.readyMinutes() > first) continue;
            if (chosen.isEmpty() || Math.abs(fill - wanted) < Math.abs(chosen.get() - wanted))
                chosen = Optional.of(fill);
        }
        return chosen.map(fill -> filled(course, water, fill));
    }

    private Optional<TubDraft.Filling> earliest(SoakLaw.Course course, Celsius water, int first, Window window) {
        return fills.stream()
                .filter(fill -> window.allows(fill) && fill + course.readyMinutes() >= first)
                .min(Integer::compare)
                .map(fill -> filled(course, water, fill));
    }

    private static TubDraft.Filling filled(SoakLaw.Course course, Celsius water, int fill) {
        return new TubDraft.Filling(water, fill, fill + course.readyMinutes(), fill + course.latestMinutes());
    }

    /** Tap water first, then a degree warmer each, as long as the mean stays cool enough and the window wide enough. */
    private List<Celsius> waters(Tub tub) {
        List<Celsius> waters = new ArrayList<>();
        waters.add(temperatures.tap());
        for (int tenths = temperatures.tap().tenths() + 10; tenths <= 10 * SoakLaw.WARMEST_MEAN; tenths += 10) {
            Celsius warm = Celsius.tenths(tenths);
            SoakLaw.Course course = course(tub, warm);
            if (course.mean() <= SoakLaw.WARMEST_MEAN && course.windowMinutes() >= SoakLaw.NARROWEST_WINDOW_MINUTES)
                waters.add(warm);
        }
        return waters;
    }

    /** The course of a tub that is filled after the last reading of the room. */
    SoakLaw.Course course(Tub tub, Celsius water) {
        return courses.computeIfAbsent(
                tub.hoursToRoomTenths() + "/" + water.tenths(), key -> law.course(water, temperatures.room(), tub));
    }

    /** The course of a tub that is or was filled at a minute, with what the room has done since. */
    SoakLaw.Course course(Tub tub, Celsius water, int fill) {
        Instant at = clock.instant(fill);
        if (temperatures.curve().isSteady() || !at.isBefore(temperatures.curve().steadyFrom()))
            return course(tub, water);
        return courses.computeIfAbsent(
                tub.hoursToRoomTenths() + "/" + water.tenths() + "/" + fill,
                key -> law.course(TubWater.inRoom(water, temperatures.curve(), tub, at)));
    }
}
