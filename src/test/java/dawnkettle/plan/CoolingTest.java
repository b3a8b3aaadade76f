package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.shop.BlockSize;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The brick's first term in 2 °C water against the reference table (derived; diffusivity from memory), 1 % on the code. */
class CoolingTest {
    @ParameterizedTest
    @CsvSource({"60, 100, 100, 2.29, 1.71", "80, 250, 250, 0.90, 4.34", "100, 350, 350, 0.56, 7.02"})
    void rate_and_hours_to_5_degrees(int height, int length, int width, double rate, double hours) {
        BlockSize block = new BlockSize(length, width, height);
        assertThat(Cooling.ratePerHour(block)).isCloseTo(rate, within(0.01 * rate + 0.005));
        assertThat(Cooling.minutesToCold(block, 2) / 60.0).isCloseTo(hours, within(0.015 * hours + 0.02));
    }

    /** FDA Food Code 3-501.14(A): 57 to 21 °C in 2 h and to 5 °C in 6 h; a whole box fails, a cut block passes. */
    @Test
    void small_blocks_meet_the_published_limit_and_whole_boxes_do_not() {
        assertThat(Cooling.meetsTwoSteps(new BlockSize(100, 100, 60), 2)).isTrue();
        assertThat(Cooling.meetsTwoSteps(new BlockSize(250, 250, 80), 2)).isFalse();
        assertThat(Cooling.meetsTwoSteps(new BlockSize(350, 350, 100), 2)).isFalse();
    }

    @Test
    void the_height_that_would_pass_passes_and_one_more_does_not() {
        BlockSize box = new BlockSize(250, 250, 100);
        int height = Cooling.largestHeight(box, 2);
        assertThat(Cooling.meetsTwoSteps(new BlockSize(250, 250, height), 2)).isTrue();
        assertThat(Cooling.meetsTwoSteps(new BlockSize(250, 250, height + 1), 2))
                .isFalse();
    }
}
