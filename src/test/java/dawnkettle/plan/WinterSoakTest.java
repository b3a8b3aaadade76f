package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The demonstration shop as its soak room gets colder: no early call, an early call, and a winter in which even that is too late. */
class WinterSoakTest {
    private static final DemoDay FRIDAY = new DemoDay(LocalDate.of(2026, 12, 4));

    private static Mass beans(SoakCall call) {
        return Mass.sum(call.groups().stream().map(SoakCall.GroupMass::beans).toList());
    }

    @Test
    void the_colder_the_room_the_more_is_settled_before_the_close() {
        SoakCall warm = FRIDAY.call(Celsius.degrees(25), 0);
        SoakCall mild = FRIDAY.call(Celsius.degrees(17), 0);
        SoakCall cold = FRIDAY.call(Celsius.degrees(8), 0);
        assertThat(warm.isEmpty()).isTrue();
        assertThat(beans(mild)).isGreaterThan(Mass.ZERO).isLessThan(beans(cold));
        assertThat(cold.notes()).noneMatch(note -> note.contains("too late:"));
    }

    /** A winter that needs the early warning: 4 °C is colder than any published soak, and not even a call at 05:00 is in time. */
    @Test
    void a_winter_in_which_the_call_is_too_late_is_told_in_minutes_with_the_ways_out() {
        List<String> notes = FRIDAY.call(Celsius.degrees(4), 0).notes();
        assertThat(notes.get(0)).startsWith("The soak room stands at 4.0 °C (set by hand), colder than any soak");
        assertThat(notes.get(1))
                .isEqualTo(
                        "The soak is 470 min too late: filled first thing, at Thu 05:10, with tap water of 9.0 °C the"
                                + " beans are ready at Fri 10:20; the first grind would be at Fri 02:30.");
        assertThat(notes.get(2))
                .startsWith("Way out, warmer water: filled with 25.0 °C")
                .contains("min sooner (mean ");
        assertThat(notes.get(3)).startsWith("Way out, a later first grind: at Fri 06:26, vans late: ");
        assertThat(notes.get(4)).matches("Way out, the sure part now: [0-9]+ kg of beans .*");
    }

    /** Warm water only as far as is allowed: the mean not above 25 °C, two hours between ready and too late. */
    @Test
    void water_is_never_warmer_than_is_allowed() {
        for (int room = 2; room <= 28; room += 2) {
            SoakCall call = FRIDAY.call(Celsius.degrees(room), 0);
            for (PlannedSoak soak : call.tubs()) {
                if (soak.waterTemperature().compareTo(Celsius.degrees(9)) <= 0) continue; // the tap's
                var tub = FRIDAY.conf.shop().floor().tubs().stream()
                        .filter(one -> one.code().equals(soak.tub()))
                        .findFirst()
                        .orElseThrow();
                SoakLaw.Course course = SoakLaw.DEFAULT.course(soak.waterTemperature(), soak.room(), tub);
                assertThat(course.mean()).isLessThanOrEqualTo(25);
                assertThat(course.windowMinutes()).isGreaterThanOrEqualTo(120);
            }
        }
    }

    /** How sure it is stands with every tub: the published figures leave hours. */
    @Test
    void every_tub_says_how_sure_it_is() {
        for (PlannedSoak soak : FRIDAY.call(Celsius.degrees(12), 0).tubs()) {
            PlannedSoak.Certainty sure = soak.certainty().orElseThrow();
            assertThat(sure.soonest())
                    .isBefore(soak.readyAt().minusSeconds(3600))
                    .isAfter(soak.fillAt());
            assertThat(sure.latest()).isAfter(soak.readyAt().plusSeconds(3600));
            assertThat(sure.observations()).isZero();
        }
    }
}
