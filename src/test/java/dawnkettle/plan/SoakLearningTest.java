package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.measure.Celsius;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SoakLearningTest {
    private static final SoakLaw GUESS = SoakLaw.DEFAULT;

    @Test
    void without_observations_the_published_figures_hold() {
        assertThat(SoakLearning.from(List.of())).isEqualTo(SoakBelief.PUBLISHED);
    }

    /** A shop whose beans are a quarter slower and more sensitive to cold; 200 looks, with an eye that is not sharp. */
    @Test
    void many_looks_find_a_shifted_truth() {
        SoakLaw truth = new SoakLaw(1.40, 2.14 * 1.25, 45_000, 1.15);
        SoakBelief belief = SoakLearning.from(looks(truth, 200, 5));
        for (int celsius : new int[] {8, 14, 20, 26})
            assertThat(belief.law().hoursTo(1.15, celsius))
                    .as("%d °C", celsius)
                    .isCloseTo(truth.hoursTo(1.15, celsius), within(0.06 * truth.hoursTo(1.15, celsius)));
        assertThat(belief.factor(14))
                .isLessThan(SoakBelief.PUBLISHED.factor(14))
                .isLessThan(1.1);
    }

    /** Five looks move it part of the way (in the mean of twenty shops), eighty nearly all of it. */
    @Test
    void it_moves_slowly_towards_the_truth() {
        SoakLaw truth = new SoakLaw(1.40, 2.14 * 1.3, 33_000, 1.15);
        double five = 0;
        double eighty = 0;
        for (int seed = 1; seed <= 20; seed++) {
            five += SoakLearning.from(looks(truth, 5, seed)).law().hoursTo(1.15, 17) / 20;
            eighty += SoakLearning.from(looks(truth, 80, seed)).law().hoursTo(1.15, 17) / 20;
        }
        double guess = GUESS.hoursTo(1.15, 17);
        double right = truth.hoursTo(1.15, 17);
        assertThat((five - guess) / (right - guess)).isBetween(0.3, 0.9);
        assertThat(eighty).isCloseTo(right, within(0.03 * right));
    }

    @Test
    void one_wild_observation_moves_little() {
        double planned = GUESS.hoursTo(1.15, 20);
        SoakBelief wild = SoakLearning.from(List.of(new SoakObservation(Celsius.degrees(20), 60 * 40, false)));
        assertThat(wild.law().hoursTo(1.15, 20)).isCloseTo(planned, within(0.05 * planned));
        SoakBelief ready = SoakLearning.from(List.of(new SoakObservation(Celsius.degrees(20), 60, true)));
        assertThat(ready.law().hoursTo(1.15, 20)).isCloseTo(planned, within(0.05 * planned));
    }

    @Test
    void one_look_near_the_hours_in_doubt_moves_a_little_the_right_way() {
        int planned = (int) (60 * GUESS.hoursTo(1.15, 15));
        double later = SoakLearning.from(List.of(new SoakObservation(Celsius.degrees(15), planned, false)))
                .law()
                .hoursTo(1.15, 15);
        double sooner = SoakLearning.from(List.of(new SoakObservation(Celsius.degrees(15), planned, true)))
                .law()
                .hoursTo(1.15, 15);
        assertThat(60 * later / planned).isBetween(1.05, 1.30);
        assertThat(60 * sooner / planned).isBetween(0.75, 0.95);
    }

    /** Published energies run from 14 to 60 kJ/mol; whatever is written down, the constants stay within. */
    @Test
    void the_constants_stay_within_what_was_ever_published() {
        List<SoakObservation> absurd = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            absurd.add(new SoakObservation(Celsius.degrees(6), 60 * 90, false));
            absurd.add(new SoakObservation(Celsius.degrees(28), 60, true));
        }
        SoakLaw law = SoakLearning.from(absurd).law();
        assertThat(law.activationJoules()).isBetween(14_000.0, 60_000.0);
        assertThat(law.rateHours()).isBetween(2.14 / 2.5, 2.14 * 2.5);
    }

    @Test
    void the_order_of_looking_does_not_matter() {
        List<SoakObservation> looks = looks(GUESS, 30, 7);
        List<SoakObservation> backwards = new ArrayList<>(looks);
        Collections.reverse(backwards);
        assertThat(SoakLearning.from(backwards).law().rateHours())
                .isCloseTo(SoakLearning.from(looks).law().rateHours(), within(1e-9));
    }

    @Test
    void what_moved_is_said() {
        SoakBelief moved = SoakLearning.from(List.of(new SoakObservation(Celsius.degrees(15), 17 * 60, false)));
        assertThat(moved.movedFrom(SoakBelief.PUBLISHED))
                .startsWith("Soak constants by 1 observation: k1 at 20 °C from 2.14 to 2.")
                .contains("activation energy from 33.0 to ")
                .contains("at 10 °C beans now take ");
    }

    /** From reference figures: at 5 °C energies of 20 and 60 kJ/mol lie 1.56 and 3.77 times the hours at 20 °C apart. */
    @Test
    void the_published_guess_says_that_a_winter_soak_is_a_guess() {
        assertThat(SoakBelief.PUBLISHED.factor(5)).isBetween(1.5, 2.0);
        assertThat(SoakBelief.PUBLISHED.factor(20)).isBetween(1.4, 1.5);
        assertThat(SoakBelief.PUBLISHED.sentence(10))
                .isEqualTo(
                        "Published figures alone, nothing observed here yet: at 10.0 °C beans are taken to need 22.2 h;"
                                + " in four nights of five 14.5 to 34.1 h.");
    }

    private static List<SoakObservation> looks(SoakLaw truth, int count, long seed) {
        Random dice = new Random(seed);
        List<SoakObservation> looks = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int celsius = 8 + dice.nextInt(19);
            double asked = GUESS.hoursTo(1.15, celsius) * (0.8 + 0.7 * dice.nextDouble());
            double needed = truth.hoursTo(1.15, celsius) * StrictMath.exp(0.12 * dice.nextGaussian());
            looks.add(new SoakObservation(Celsius.degrees(celsius), (int) (60 * asked), asked >= needed));
        }
        return looks;
    }
}
