package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Volume;
import dawnkettle.shop.Tub;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Soaks through nights that get colder: an open hourly record, and the norms of two climates. The hours test code, not nature. */
class NightCurveTest {
    private static final SoakLaw LAW = SoakLaw.DEFAULT;

    /** New York Central Park 1981-2010 (NOAA, as on a Wikipedia user page), °F: monthly means of the daily extremes. */
    private static final double[] NEW_YORK_MAX = {38.3, 41.6, 49.7, 61.2, 70.8, 79.3, 84.1, 82.6, 75.2, 63.8, 53.8, 43.0
    };

    private static final double[] NEW_YORK_MIN = {26.9, 28.9, 35.2, 44.8, 54.0, 63.6, 68.8, 67.8, 60.8, 50.0, 41.6, 32.0
    };

    /** San Francisco 1961-1990 (NCDC, wrcc.dri.edu cliNORMNCDC ca7772; the city from memory, fair), °F. */
    private static final double[] SAN_FRANCISCO_MAX = {
        56.3, 60.0, 60.8, 62.1, 62.7, 64.1, 64.6, 65.6, 68.7, 68.7, 62.7, 56.4
    };

    private static final double[] SAN_FRANCISCO_MIN = {
        45.8, 48.7, 49.0, 49.8, 50.5, 52.6, 53.5, 54.6, 55.9, 55.2, 51.6, 47.0
    };

    /** Derived from those norms with the default law, water as warm as the air: at the mean, and by a cosine from 18:00. */
    private static final double[] NEW_YORK_AT_MEAN = {
        36.5, 33.8, 27.4, 20.5, 15.9, 12.6, 11.1, 11.5, 13.8, 18.4, 23.7, 31.6
    };

    private static final double[] NEW_YORK_BY_HOUR = {
        37.3, 34.2, 27.0, 20.9, 17.1, 13.8, 12.1, 12.5, 14.9, 19.2, 23.6, 31.7
    };
    private static final double[] SAN_FRANCISCO_AT_MEAN = {
        21.6, 19.7, 19.5, 18.9, 18.6, 17.7, 17.4, 16.9, 16.0, 16.1, 18.3, 21.2
    };
    private static final double[] SAN_FRANCISCO_BY_HOUR = {
        21.8, 20.2, 20.0, 19.5, 19.2, 18.4, 18.1, 17.7, 16.9, 17.1, 18.9, 21.4
    };

    private static RoomCurve seattle() throws IOException {
        List<RoomCurve.Reading> readings = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of("src/test/resources/climate/seattle-hours.csv"))) {
            if (!line.startsWith("2010")) continue;
            String[] cells = line.split(",");
            readings.add(new RoomCurve.Reading(
                    LocalDateTime.parse(cells[0]).toInstant(ZoneOffset.UTC), Celsius.of(new BigDecimal(cells[1]))));
        }
        return new RoomCurve(readings);
    }

    /** An open hourly record (Seattle normals): a soak that begins at 18:00, water as warm as the air; derived hours. */
    @ParameterizedTest
    @CsvSource({"01, 27.83", "04, 22.46", "07, 16.00", "10, 21.21"})
    void a_soak_through_a_recorded_night(String month, double hours) throws IOException {
        Instant fill = Instant.parse("2010-" + month + "-15T18:00:00Z");
        assertThat(LAW.hoursToReady(TubWater.measured(seattle(), fill))).isCloseTo(hours, within(0.05));
    }

    /** The day's mean alone (18.43 °C, 14.83 h) is 1.2 h too hopeful for a soak that begins in the evening. */
    @Test
    void the_mean_of_a_day_is_too_hopeful_for_its_night() throws IOException {
        Instant fill = Instant.parse("2010-07-15T18:00:00Z");
        double byHour = LAW.hoursToReady(TubWater.measured(seattle(), fill));
        assertThat(byHour - LAW.hoursTo(1.15, 18.43)).isCloseTo(1.2, within(0.1));
    }

    /** 15 and 16 July of the record: 05:00 and its neighbours are coldest, 16:00 warmest or next to it. */
    @Test
    void between_the_hours_the_record_is_even() throws IOException {
        RoomCurve curve = seattle();
        assertThat(curve.at(Instant.parse("2010-07-15T18:00:00Z"))).isEqualTo(22.6);
        assertThat(curve.at(Instant.parse("2010-07-15T18:30:00Z"))).isCloseTo(22.0, within(1e-9));
        assertThat(curve.at(Instant.parse("2009-01-01T00:00:00Z")))
                .isEqualTo(curve.readings().get(0).celsius().degrees());
        assertThat(curve.at(Instant.parse("2011-01-01T00:00:00Z")))
                .isEqualTo(curve.last().degrees());
    }

    @Test
    void two_climates_at_their_monthly_means() {
        for (int month = 0; month < 12; month++) {
            assertThat(LAW.hoursTo(1.15, mean(NEW_YORK_MIN, NEW_YORK_MAX, month)))
                    .as("New York, month %d", month + 1)
                    .isCloseTo(NEW_YORK_AT_MEAN[month], within(0.1));
            assertThat(LAW.hoursTo(1.15, mean(SAN_FRANCISCO_MIN, SAN_FRANCISCO_MAX, month)))
                    .as("San Francisco, month %d", month + 1)
                    .isCloseTo(SAN_FRANCISCO_AT_MEAN[month], within(0.1));
        }
    }

    @Test
    void two_climates_hour_by_hour() {
        for (int month = 0; month < 12; month++) {
            assertThat(byHour(NEW_YORK_MIN, NEW_YORK_MAX, month))
                    .as("New York, month %d", month + 1)
                    .isCloseTo(NEW_YORK_BY_HOUR[month], within(0.1));
            assertThat(byHour(SAN_FRANCISCO_MIN, SAN_FRANCISCO_MAX, month))
                    .as("San Francisco, month %d", month + 1)
                    .isCloseTo(SAN_FRANCISCO_BY_HOUR[month], within(0.1));
        }
    }

    /** The warmest month by its mean is September there, not July. */
    @Test
    void the_quickest_soak_of_san_francisco_is_in_september() {
        double least = Double.MAX_VALUE;
        int quickest = -1;
        for (int month = 0; month < 12; month++) {
            double hours = LAW.hoursTo(1.15, mean(SAN_FRANCISCO_MIN, SAN_FRANCISCO_MAX, month));
            if (hours < least) quickest = month + 1;
            least = Math.min(least, hours);
        }
        assertThat(quickest).isEqualTo(9);
    }

    /** New York's means of December to February lie below 5 °C, where no soak was published; its nights below freezing. */
    @Test
    void a_winter_below_what_was_published_is_warned_of() {
        for (int month = 0; month < 12; month++) {
            boolean cold = month == 11 || month <= 1;
            Celsius mean = tenths(mean(NEW_YORK_MIN, NEW_YORK_MAX, month));
            assertThat(SoakDoubts.of(new Temperatures(mean, Celsius.degrees(8), "norm"))
                            .isEmpty())
                    .as("New York, month %d", month + 1)
                    .isEqualTo(!cold);
            assertThat(SoakDoubts.of(new Temperatures(
                            tenths(mean(SAN_FRANCISCO_MIN, SAN_FRANCISCO_MAX, month)), Celsius.degrees(8), "norm")))
                    .isEmpty();
        }
        assertThat(SoakDoubts.of(new Temperatures(tenths(celsius(26.9)), Celsius.degrees(5), "norm of January")))
                .containsExactly("The soak room stands at -2.8 °C (norm of January): water freezes there."
                        + " Soak elsewhere, or warm the room first.");
    }

    /** A tub lags behind the room, so that its soak through a cold night is quicker than the air's. */
    @Test
    void a_slow_tub_is_warmer_than_the_night() throws IOException {
        Instant fill = Instant.parse("2010-07-15T18:00:00Z");
        Tub slow = new Tub("T1", Volume.litres(290), Mass.kilograms(90), 60);
        Celsius water = Celsius.tenths(226);
        double tub = LAW.hoursToReady(TubWater.inRoom(water, seattle(), slow, fill));
        assertThat(tub).isLessThan(LAW.hoursToReady(TubWater.measured(seattle(), fill)) - 0.5);
    }

    /** What a tub filled at 18:00 has gone through counts, not what the thermometer says at the dawn check. */
    @Test
    void at_dawn_a_filled_tub_is_judged_by_the_night_it_had() {
        java.time.ZoneId zone = ZoneOffset.UTC;
        DayClock clock = new DayClock(java.time.LocalDate.of(2026, 12, 4), zone);
        Instant fill = Instant.parse("2026-12-03T18:00:00Z");
        Instant dawn = Instant.parse("2026-12-04T02:00:00Z");
        Celsius warm = Celsius.degrees(20);
        RoomCurve cold = new RoomCurve(List.of(
                new RoomCurve.Reading(fill, warm),
                new RoomCurve.Reading(fill.plusSeconds(3600), Celsius.degrees(8)),
                new RoomCurve.Reading(dawn.minusSeconds(3600), Celsius.degrees(8)),
                new RoomCurve.Reading(dawn, warm)));
        Tub tub = new Tub("T1", Volume.litres(290), Mass.kilograms(90), 35);
        TubTimes now = new TubTimes(SoakBeliefs.PUBLISHED, new Temperatures(warm, warm, "sensor"), clock, List.of());
        TubTimes through =
                new TubTimes(SoakBeliefs.PUBLISHED, new Temperatures(warm, warm, "log", cold), clock, List.of());
        int filled = clock.minute(fill);
        assertThat(through.course(tub, warm, filled).readyMinutes())
                .isGreaterThan(now.course(tub, warm, filled).readyMinutes() + 60);
        int later = clock.minute(dawn) + 10;
        assertThat(through.course(tub, warm, later)).isEqualTo(now.course(tub, warm, later));
    }

    /** A curve that stands still is the steady room, to the minute. */
    @Test
    void a_still_curve_is_a_steady_room() {
        Instant fill = Instant.parse("2026-12-03T20:00:00Z");
        Celsius room = Celsius.degrees(17);
        RoomCurve still = new RoomCurve(List.of(
                new RoomCurve.Reading(fill.minusSeconds(3600), room),
                new RoomCurve.Reading(fill.plusSeconds(90_000), room)));
        Tub tub = new Tub("T1", Volume.litres(290), Mass.kilograms(90), 35);
        SoakLaw.Course steady = LAW.course(Celsius.degrees(9), room, tub);
        SoakLaw.Course curve = LAW.course(TubWater.inRoom(Celsius.degrees(9), still, tub, fill));
        assertThat(curve.readyMinutes()).isEqualTo(steady.readyMinutes());
        assertThat(curve.latestMinutes()).isEqualTo(steady.latestMinutes());
    }

    private static double byHour(double[] min, double[] max, int month) {
        double mean = mean(min, max, month);
        double swing = (celsius(max[month]) - celsius(min[month])) / 2;
        return LAW.hoursToReady(minute -> {
            double hour = 18 + (minute + 0.5) / 60;
            return mean + swing * Math.cos(2 * Math.PI * (hour - 15) / 24);
        });
    }

    private static double mean(double[] min, double[] max, int month) {
        return celsius((min[month] + max[month]) / 2);
    }

    private static double celsius(double fahrenheit) {
        return (fahrenheit - 32) / 1.8;
    }

    private static Celsius tenths(double celsius) {
        return Celsius.of(BigDecimal.valueOf(celsius).setScale(1, RoundingMode.HALF_UP));
    }
}
