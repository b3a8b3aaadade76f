package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The science against published tables and worked examples; the source stands beside each. */
class TradeExamplesTest {
    /** USDA-ARS, cooling rice (pmp.errc.ars.usda.gov, ModelID 2021166): °C at hours 0 to 12, surroundings 0 °C. */
    private static final double[] COOLING_RICE = {
        54.59, 45.99, 38.94, 32.92, 27.86, 23.43, 19.89, 16.71, 14.14, 11.94, 10.13, 8.48, 7.21
    };

    private static CoolingCourse course(double... byHour) {
        List<CoolingCourse.Reading> readings = new ArrayList<>();
        for (int hour = 0; hour < byHour.length; hour++) readings.add(new CoolingCourse.Reading(hour, byHour[hour]));
        return new CoolingCourse(readings);
    }

    /** The table is UK guidance (Chilled Food Association 2006, as on vacuumpackingtraining.food.gov.uk). */
    @Test
    void lethality_reproduces_the_published_minutes_from_80_to_100_degrees() {
        double[] minutes = {
            129, 100, 77, 60, 46, 36, 28, 22, 17, 13, 10.0, 7.9, 6.3, 5.0, 4.0, 3.2, 2.5, 2.0, 1.6, 1.3, 1.0
        };
        for (int i = 0; i < minutes.length; i++)
            assertThat(Lethality.minutesAsked(80 + i))
                    .as("%d °C", 80 + i)
                    .isCloseTo(minutes[i], within(0.035 * minutes[i]));
    }

    @Test
    void ten_measured_minutes_at_90_are_enough_and_nine_are_not() {
        double[] ten = {90, 90, 90, 90, 90, 90, 90, 90, 90, 90};
        assertThat(Lethality.minutes(ten)).isGreaterThanOrEqualTo(Lethality.ASKED_MINUTES);
        assertThat(Lethality.minutes(java.util.Arrays.copyOf(ten, 9))).isLessThan(Lethality.ASKED_MINUTES);
    }

    /** FDA Food Code 3-501.14(A) on the USDA-ARS course: 38.94 °C after two hours fails. */
    @Test
    void the_slow_course_fails_the_two_steps() {
        assertThat(course(COOLING_RICE).meetsTwoSteps()).isFalse();
        assertThat(course(57, 39, 21, 15, 10, 7, 5).meetsTwoSteps()).isTrue();
        assertThat(course(57, 39, 21, 15, 10, 7, 5.1, 5).meetsTwoSteps()).isFalse();
        assertThat(course(57, 30, 20).meetsTwoSteps())
                .as("not followed to 5 °C")
                .isFalse();
    }

    @Test
    void readings_out_of_order_are_refused() {
        assertThatThrownBy(() ->
                        new CoolingCourse(List.of(new CoolingCourse.Reading(1, 50), new CoolingCourse.Reading(1, 40))))
                .hasMessageContaining("reading 2 is not later");
    }

    /** Newton fitted to the same table: k = 0.1687 1/h, every point within a quarter of a degree. */
    @Test
    void newton_follows_the_published_course() {
        for (int hour = 0; hour < COOLING_RICE.length; hour++)
            assertThat(Cooling.newton(54.59, 0, 0.1687, hour)).isCloseTo(COOLING_RICE[hour], within(0.25));
    }

    /** Derived: the slowest rates that meet the two steps in a bath of 2 and of 4 °C. */
    @Test
    void the_bath_must_cool_at_least_so_fast() {
        assertThat(Cooling.slowestRate(2)).isCloseTo(0.531, within(0.001));
        assertThat(Cooling.slowestRate(4)).isCloseTo(0.662, within(0.001));
    }

    /** Slab, first term, 1.35e-7 m²/s (from memory, fair), 2 °C water: from 75 °C to 5 and to 21 °C, hours; 1 % on the code. */
    @ParameterizedTest
    @CsvSource({"40, 1.15, 0.53", "60, 2.58, 1.19"})
    void slabs_take_the_derived_hours(double thick, double cold, double firstStep) {
        assertThat(Cooling.slabMinutes(thick, 2, 75, 5) / 60).isCloseTo(cold, within(0.01 * cold + 0.005));
        assertThat(Cooling.slabMinutes(thick, 2, 75, 21) / 60).isCloseTo(firstStep, within(0.01 * firstStep + 0.005));
    }

    /** FDA/FSIS 2003 Listeria assessment, appendix 8 (docslib 11861414): rates seen, converted to 5 °C. */
    @ParameterizedTest
    @CsvSource({
        "2.1, 28, 4, .107", "5.4, 21, 8, .116", "2.0, 21, 4, .136", "4.6, 14, 8, .149", "0.5, 20, 4, .035",
        "3.9, 28, 4, .198", "3.5, 9, 10, .119", "1, 10, 4, .142", "3, 14, 8, .097", "5, 11, 10, .139",
        "4, 7, 10, .175", "2.8, 21, 4, .190", "4.25, 5.208333, 10, .249", "4, 27.083333, 5, .148",
    })
    void growth_at_5_degrees_is_the_published_one(double logs, double days, double seenAt, double rate) {
        assertThat(ColdGrowth.rate(logs / days, seenAt, 5)).isCloseTo(rate, within(0.002));
    }

    /** The last row of the same table is a generation time: 12 h at 7 °C. */
    @Test
    void a_generation_time_is_a_rate() {
        assertThat(ColdGrowth.rate(ColdGrowth.logsPerDay(12), 7, 5)).isCloseTo(0.342, within(0.002));
        assertThat(ColdGrowth.rate(1, 5, -2)).isZero();
    }

    /** Derived from USDA SR 16126, 16159, 16129 and the Japanese tables of 2020 by keeping all protein. */
    @ParameterizedTest
    @CsvSource({
        "82.93,  9.04, 4.17, 50.52, 18.82, 20.18, 0.480, 0.055, 0.587",
        "82.31,  9.98, 5.26, 50.52, 18.82, 20.18, 0.530, 0.054, 0.555",
        "85.9,   7.0,  4.9,  39.9,  23.4,  34.4,  0.299, 0.054, 0.740",
        "85.9,   7.0,  4.9,  75.9,  10.7,  11.3,  0.654, 0.025, 0.362",
    })
    void frying_by_protein(
            double w0, double p0, double f0, double w1, double p1, double f1, double mass, double oil, double off) {
        Frying fried = Frying.of(new Frying.Food(w0, p0, f0), new Frying.Food(w1, p1, f1));
        assertThat(fried.mass()).isCloseTo(mass, within(0.005));
        assertThat(fried.oil()).isCloseTo(oil, within(0.005));
        assertThat(fried.waterOff()).isCloseTo(off, within(0.005));
        assertThat(fried.unexplained()).isBetween(-0.035, 0.02); // the same source's closure: -3.1 to +1.5 %
    }

    /** Derived: 100 kg of slurry with 8.3 % solids from 15 to 100 °C; condensing steam adds about 14.7 kg of water. */
    @Test
    void heat_to_the_boil() {
        double heat = KettleHeat.megajoules(100, 1 - 0.083, 15, KettleHeat.BOILING);
        assertThat(heat).isCloseTo(33.2, within(33.2 * 0.02));
        assertThat(KettleHeat.kilowattHours(heat)).isCloseTo(9.23, within(9.23 * 0.02));
        assertThat(KettleHeat.steam(heat)).isCloseTo(14.7, within(14.7 * 0.02));
    }

    /** Geankoplis A.4 (as on safaribooksonline): whole milk 3.85, skim milk 3.98 kJ/kg K; the line is within 4 %. */
    @Test
    void specific_heat_of_milk() {
        assertThat(KettleHeat.specificHeat(0.875)).isCloseTo(3.85, within(3.85 * 0.04));
        assertThat(KettleHeat.specificHeat(0.91)).isCloseTo(3.98, within(3.98 * 0.04));
    }

    /** A bushel of soybeans is 60 lb, so a tonne 36.7437 bushels (agrimoney.com/calculator). */
    @Test
    void a_bushel_of_soybeans() {
        double kilograms = 60 * 0.45359237;
        assertThat(kilograms).isCloseTo(27.2155, within(27.2155e-4));
        assertThat(1000 / kilograms).isCloseTo(36.7437, within(36.7437e-4));
    }
}
