package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Volume;
import dawnkettle.shop.Tub;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SoakLooksTest {
    private static final SoakLaw PUBLISHED = SoakLaw.DEFAULT;

    private static SoakLook look(String group, int celsius, double hours, boolean ready) {
        return new SoakLook(group, new SoakObservation(Celsius.degrees(celsius), (int) (60 * hours), ready));
    }

    private static double hours(SoakBelief belief, double celsius) {
        return belief.law().hoursTo(belief.law().target(), celsius);
    }

    @Test
    void without_a_look_the_published_figures_hold_and_nothing_is_said() {
        SoakLooks none = SoakLooks.of(List.of());
        assertThat(none.beliefs()).isEqualTo(SoakBeliefs.PUBLISHED);
        assertThat(none.sentences()).isEmpty();
    }

    @Test
    void the_beans_of_one_group_say_nothing_of_those_of_another() {
        List<SoakLook> looks = new ArrayList<>();
        for (int i = 0; i < 12; i++) looks.add(look("yellow", 18, 17, false));
        SoakLooks learnt = SoakLooks.of(looks);
        assertThat(hours(learnt.beliefs().of("yellow"), 18)).isGreaterThan(hours(SoakBelief.PUBLISHED, 18) * 1.1);
        assertThat(learnt.beliefs().of("milk")).isEqualTo(SoakBelief.PUBLISHED);
        assertThat(learnt.sentences()).hasSize(1);
        assertThat(learnt.sentences().get(0))
                .startsWith("Soak constants of yellow beans learnt from 12 looks: at 10 °C ")
                .contains(" h instead of 22.2, at 20 °C ")
                .endsWith(" h instead of 13.8. The published ones keep their weight.");
    }

    /** Wrong looks, each of them ready after an hour or so, move nothing and are told of. */
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 1, 3, 6})
    void beans_that_somebody_calls_ready_far_too_early_shorten_no_soak(double hours) {
        List<SoakLook> looks = new ArrayList<>();
        for (int i = 0; i < 200; i++) looks.add(look("yellow", 20, hours, true));
        SoakLooks learnt = SoakLooks.of(looks);
        assertThat(learnt.beliefs().of("yellow")).isEqualTo(SoakBelief.PUBLISHED);
        assertThat(learnt.sentences())
                .containsExactly("200 looks at yellow beans can't be true (ready in less than half the published hours,"
                        + " not ready after twice as many, or in water of no soak) and are left out.");
    }

    /** The everyday rule: about ten hours at room temperature (common practice, no source). */
    @ParameterizedTest
    @CsvSource({"20, 7.2", "20, 8", "10, 12", "25, 6", "6, 16"})
    void however_often_beans_are_called_ready_early_no_soak_is_counted_shorter_than_is_safe(int celsius, double hours) {
        List<SoakLook> looks = new ArrayList<>();
        for (int i = 0; i < 200; i++) looks.add(look("yellow", celsius, hours, true));
        SoakBelief learnt = SoakLooks.of(looks).beliefs().of("yellow");
        for (int at = 5; at <= 30; at++)
            assertThat(hours(learnt, at) / hours(SoakBelief.PUBLISHED, at))
                    .as("%d °C", at)
                    .isGreaterThanOrEqualTo(0.7199);
        assertThat(hours(learnt, 20)).isGreaterThan(9.9);
    }

    @ParameterizedTest
    @CsvSource({"1, 30, false", "36, 5, true", "20, 28, false", "20, 6.8, true"})
    void what_nobody_can_have_seen_is_left_out(int celsius, double hours, boolean ready) {
        assertThat(SoakLooks.of(List.of(look("yellow", celsius, hours, ready)))
                        .beliefs()
                        .of("yellow"))
                .isEqualTo(SoakBelief.PUBLISHED);
    }

    @Test
    void the_order_of_the_looks_does_not_matter() {
        List<SoakLook> looks = new ArrayList<>();
        for (int i = 0; i < 10; i++) looks.add(look(i % 3 == 0 ? "milk" : "yellow", 14 + i, 11 + i, i % 2 == 0));
        List<SoakLook> backwards = new ArrayList<>(looks);
        Collections.reverse(backwards);
        for (String group : List.of("milk", "yellow"))
            assertThat(hours(SoakLooks.of(backwards).beliefs().of(group), 18))
                    .isCloseTo(hours(SoakLooks.of(looks).beliefs().of(group), 18), within(1e-9));
    }

    /** From 18:00 to 06:00 the clock shows twelve hours; on the night it goes forward the beans had eleven, and back thirteen. */
    @ParameterizedTest
    @CsvSource({"2027-03-13, 660", "2026-10-31, 780", "2026-12-03, 720"})
    void a_look_counts_the_hours_that_the_beans_had_and_not_those_of_the_clock(String evening, int minutes) {
        ZoneId zone = ZoneId.of("America/New_York");
        Instant fill = LocalDateTime.parse(evening + "T18:00").atZone(zone).toInstant();
        Instant seen =
                LocalDateTime.parse(evening + "T06:00").plusDays(1).atZone(zone).toInstant();
        Tub tub = new Tub("T1", Volume.litres(290), Mass.kilograms(90), 35);
        PlannedSoak soak = new PlannedSoak(
                "T1",
                "yellow",
                Mass.kilograms(80),
                List.of(),
                Mass.kilograms(200),
                Celsius.degrees(18),
                Celsius.degrees(18),
                "drawn",
                fill,
                seen,
                seen,
                700,
                Mass.ZERO,
                List.of());
        SoakObservation look = SoakObservation.of(soak, tub, seen, true);
        assertThat(look.minutes()).isEqualTo(minutes);
        assertThat(look.water()).isEqualTo(Celsius.degrees(18));
    }

    @Test
    void a_tub_is_planned_by_the_looks_at_its_own_beans() {
        List<SoakLook> looks = new ArrayList<>();
        for (int i = 0; i < 40; i++) looks.add(look("yellow", 18, PUBLISHED.hoursTo(1.15, 18) * 1.2, false));
        SoakBeliefs beliefs = SoakLooks.of(looks).beliefs();
        Celsius room = Celsius.degrees(18);
        TubTimes times = new TubTimes(
                beliefs,
                new Temperatures(room, room, "drawn"),
                new DayClock(java.time.LocalDate.of(2026, 12, 4), ZoneId.of("America/New_York")),
                List.of(-600));
        Tub tub = new Tub("T1", Volume.litres(290), Mass.kilograms(90), 35);
        int yellow = times.of("yellow").course(tub, room).readyMinutes();
        assertThat(yellow).isGreaterThan(times.of("milk").course(tub, room).readyMinutes() + 60);
        assertThat(times.of("milk")).isSameAs(times);
    }
}
