package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ControlChartTest {
    private static List<Double> numbers(String text) {
        return Arrays.stream(text.strip().split("\\s+")).map(Double::valueOf).toList();
    }

    /** NIST/SEMATECH e-Handbook 6.3.2.2, flow rate of ten batches: mean 50.81, ranges 1.8778, limits 45.8159 and 55.8041 (from memory; recomputed). */
    @Test
    void the_limits_of_single_values_are_those_of_the_handbook() {
        ControlChart chart = ControlChart.of(numbers("49.6 47.6 49.9 51.3 47.8 51.2 52.6 52.4 53.6 52.1"));
        assertThat(chart.centre()).isCloseTo(50.81, within(1e-9));
        assertThat(chart.sigma() * 1.128).isCloseTo(1.8778, within(5e-5));
        assertThat(chart.upper()).isCloseTo(55.8041, within(1e-4));
        assertThat(chart.lower()).isCloseTo(45.8159, within(1e-4));
        assertThat(chart.values()).allMatch(value -> value > chart.lower() && value < chart.upper());
    }

    /** NIST/SEMATECH e-Handbook 6.3.2.4 (read in a test that quotes the page, doi:10.18434/M32189); its lower limit 47.4115 comes of a shortened factor, exact is 47.4116. */
    @Test
    void the_remembering_chart_is_that_of_the_handbook() {
        List<Double> measured =
                numbers("52.0 47.0 53.0 49.3 50.1 47.0 51.0 50.1 51.2 50.5 49.6 47.6 49.9 51.3 47.8 51.2"
                        + " 52.6 52.4 53.6 52.1");
        List<Double> published = numbers("50.00 50.60 49.52 50.56 50.18 50.16 49.21 49.75 49.85 50.26 50.33 50.11 49.36"
                + " 49.52 50.05 49.38 49.92 50.73 51.23 51.94 51.99");
        EwmaChart chart = EwmaChart.of(measured, 50, 2.0539);
        assertThat(chart.values()).hasSize(21);
        for (int i = 0; i < 21; i++) assertThat(chart.values().get(i)).isCloseTo(published.get(i), within(0.00501));
        assertThat(chart.upper()).isCloseTo(52.5884, within(1e-3));
        assertThat(chart.lower()).isCloseTo(47.4115, within(1e-3));
        assertThat(chart.isOut()).isFalse();
    }

    /** A chart of centre 0 and spread 1 by construction: the base decides, the rest is only judged. */
    private static ControlChart judged(double... values) {
        List<Double> all = new ArrayList<>();
        for (double value : values) all.add(value);
        return new ControlChart(all, 0, 1);
    }

    @Test
    void each_run_rule_speaks_at_its_last_point_and_not_before() {
        assertThat(RunRule.broken(judged(0, 3.1, 0), 1)).contains(RunRule.ONE_BEYOND_THREE);
        assertThat(RunRule.broken(judged(0, 3.0, 0))).isEmpty();
        assertThat(RunRule.broken(judged(2.1, 0, 2.1), 2)).contains(RunRule.TWO_OF_THREE_BEYOND_TWO);
        assertThat(RunRule.broken(judged(2.1, 0, -2.1))).as("on both sides").isEmpty();
        assertThat(RunRule.broken(judged(-1.1, -1.1, 0, -1.1, -1.1), 4)).contains(RunRule.FOUR_OF_FIVE_BEYOND_ONE);
        assertThat(RunRule.broken(judged(.1, .2, .1, .2, .1, .2, .1))).isEmpty();
        assertThat(RunRule.broken(judged(.1, .2, .1, .2, .1, .2, .1, .2), 7)).contains(RunRule.EIGHT_ON_ONE_SIDE);
        assertThat(RunRule.broken(judged(2.1, 2.1, 2.1, 0), 3))
                .as("the last is back")
                .isEmpty();
    }

    @Test
    void values_that_are_all_alike_break_nothing_and_one_off_them_does() {
        assertThat(RunRule.broken(ControlChart.of(Collections.nCopies(9, 2.6)))).isEmpty();
        List<Double> off = new ArrayList<>(Collections.nCopies(9, 2.6));
        off.add(2.5);
        assertThat(RunRule.broken(ControlChart.of(off, 9))).containsExactly(9);
    }

    @Test
    void a_step_and_a_ramp_are_found_with_their_week_and_size() {
        List<Double> step = new ArrayList<>(Collections.nCopies(17, 2.6));
        step.addAll(Collections.nCopies(9, 2.6 * 0.96));
        assertThat(Shift.find(step, 0.01)).hasValueSatisfying(shift -> {
            assertThat(shift.first()).isEqualTo(17);
            assertThat(shift.weeks()).isEqualTo(1);
            assertThat(shift.size()).isCloseTo(-0.04, within(1e-6));
        });
        List<Double> ramp = new ArrayList<>(Collections.nCopies(15, 1.54));
        for (int i = 1; i <= 8; i++) ramp.add(1.54 * (1 + 0.05 * i));
        ramp.addAll(Collections.nCopies(3, 1.54 * 1.4));
        assertThat(Shift.find(ramp, 0.01)).hasValueSatisfying(shift -> {
            assertThat(shift.first()).isEqualTo(15);
            assertThat(shift.weeks()).isEqualTo(8);
            assertThat(shift.size()).isCloseTo(0.4, within(1e-6));
        });
    }

    @Test
    void chance_is_no_move() {
        int found = 0;
        for (int seed = 0; seed < 200; seed++) {
            Random chance = new Random(seed);
            List<Double> noise = new ArrayList<>();
            for (int i = 0; i < 26; i++) noise.add(2.6 + 0.03 * chance.nextGaussian());
            if (Shift.find(noise, 0.01).isPresent()) found++;
        }
        assertThat(found).as("of 200 series of noise").isLessThanOrEqualTo(10);
    }

    @Test
    void too_few_weeks_are_no_move() {
        assertThat(Shift.find(List.of(1.0), 0.01)).isEmpty();
    }
}
