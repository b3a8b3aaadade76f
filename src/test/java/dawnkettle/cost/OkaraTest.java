package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import org.junit.jupiter.api.Test;

class OkaraTest {
    /**
     * 30 % of the bean's solids stays in the okara (Wang and Cavins 1989); a bean holds 8.54 % water (USDA SR 16108). The
     * masses are derived from these two, for the moistures of the Japanese (about 75 %) and the USDA (81.64 %) tables.
     */
    @Test
    void a_kilogram_of_beans_leaves_1_37_kilograms_at_80_percent_moisture() {
        Mass bean = Mass.kilograms(1);
        Mass tolerance = Mass.grams(10);
        assertThat(Okara.expected(bean))
                .isBetween(Mass.grams(1_370).minus(tolerance), Mass.grams(1_370).plus(tolerance));
        assertThat(Okara.expected(bean, Share.percent(75)))
                .isBetween(Mass.grams(1_100).minus(tolerance), Mass.grams(1_100).plus(tolerance));
        assertThat(Okara.expected(bean, Share.of("0.8164")))
                .isBetween(Mass.grams(1_490).minus(tolerance), Mass.grams(1_490).plus(tolerance));
    }
}
