package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.ShopCalendar;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimetableTest {
    private static final NightSettings.Times TIMES = new NightSettings.Times(
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

    private static Timetable in(String zone) {
        Set<DayOfWeek> all = EnumSet.allOf(DayOfWeek.class);
        return new Timetable(new ShopCalendar(all, Map.of()), ZoneId.of(zone), TIMES);
    }

    /**
     * The instants of 02:30 on the nights the clocks change, by the time-zone database's rules (run on Java 17, tzdb 2025a):
     * in a gap the first instant after it, in an overlap the first of the two.
     */
    @ParameterizedTest
    @CsvSource({
        "America/New_York, 2026-03-07, 2026-03-07T07:30:00Z",
        "America/New_York, 2026-03-08, 2026-03-08T07:00:00Z",
        "America/New_York, 2026-03-09, 2026-03-09T06:30:00Z",
        "America/New_York, 2026-11-01, 2026-11-01T07:30:00Z",
        "Europe/Berlin, 2026-03-29, 2026-03-29T01:00:00Z",
        "Europe/Berlin, 2026-10-25, 2026-10-25T00:30:00Z",
        "Australia/Lord_Howe, 2026-10-04, 2026-10-03T15:30:00Z",
        "Asia/Tokyo, 2026-03-29, 2026-03-28T17:30:00Z"
    })
    void half_past_two_is_one_instant_whatever_the_clocks_do(String zone, LocalDate day, Instant instant) {
        assertThat(in(zone).at(day, LocalTime.of(2, 30))).isEqualTo(instant);
    }

    @ParameterizedTest
    @CsvSource({"America/New_York", "Europe/Berlin", "Australia/Lord_Howe", "Asia/Tokyo", "Africa/Casablanca"})
    void every_day_of_four_years_has_each_step_once_and_in_order(String zone) {
        Timetable timetable = in(zone);
        List<Instant> dawns = new ArrayList<>();
        for (LocalDate day = LocalDate.of(2026, 1, 1); day.isBefore(LocalDate.of(2030, 1, 1)); day = day.plusDays(1)) {
            List<Timetable.Slot> slots = timetable.slots(day);
            assertThat(slots).extracting(Timetable.Slot::step).doesNotHaveDuplicates();
            assertThat(slots).extracting(Timetable.Slot::due).isSorted();
            dawns.add(timetable.at(day, TIMES.dawnCheck()));
        }
        for (int i = 1; i < dawns.size(); i++)
            assertThat(Duration.between(dawns.get(i - 1), dawns.get(i)))
                    .isBetween(Duration.ofHours(22), Duration.ofHours(26));
    }

    @Test
    void the_next_close_at_or_after_the_cut_off_is_the_day_after() {
        Timetable shop = new Timetable(
                new ShopCalendar(
                        EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY),
                        Map.of(LocalDate.of(2026, 12, 8), "stocktaking")),
                ZoneId.of("America/New_York"),
                TIMES);
        LocalDate thursday = LocalDate.of(2026, 12, 3);
        assertThat(shop.closingFrom(shop.at(thursday, LocalTime.of(15, 0)))).isEqualTo(thursday.plusDays(1));
        assertThat(shop.closingFrom(shop.at(thursday, LocalTime.of(15, 1)))).isEqualTo(thursday.plusDays(2));
        LocalDate saturday = LocalDate.of(2026, 12, 5);
        assertThat(shop.closingFrom(shop.at(saturday, LocalTime.of(9, 0)))).isEqualTo(saturday.plusDays(2));
        assertThat(shop.closingFrom(shop.at(saturday, LocalTime.of(16, 0))))
                .as("Monday's book closes on Saturday; the next is Wednesday's, Tuesday being closed")
                .isEqualTo(LocalDate.of(2026, 12, 9));
    }
}
