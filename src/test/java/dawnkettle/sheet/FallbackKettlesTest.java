package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.shop.House;
import dawnkettle.shop.Shop;
import java.util.List;
import org.junit.jupiter.api.Test;

class FallbackKettlesTest {
    private static final Shop SHOP = SampleShop.of(House.Units.METRIC, 14, 4);

    @Test
    void what_is_made_from_another_adds_to_the_other() {
        Fallback fallback = new Fallback(
                SampleDay.DATE,
                SampleDay.DATE.minusWeeks(1),
                SampleDay.PLANNED_AT,
                List.of(
                        new Fallback.Line("R1", "C100", "FIRM-1", 500, 0),
                        new Fallback.Line("R1", "C101", "POUCH-1", 60, 80)));
        // 500 x 0.300 kg = 150 kg firm / 0.98 / 2.6 = 58.87 kg beans, in steps of 2.5 kg: 60 kg, two kettles of 30 kg.
        // 80 x 0.300 kg = 24 kg pouches / 0.99 / 0.6 = 40.40 kg of thin firm, in steps of 5 kg: 45 kg, two of 40 kg.
        // 45 kg thin / 0.98 / 2.6 = 17.66 kg beans: 20 kg, one kettle.
        assertThat(new FallbackKettles(fallback.given(), SHOP).needs())
                .containsExactly(
                        new FallbackKettles.Need("pouch", Mass.kilograms(45), 2),
                        new FallbackKettles.Need("firm", Mass.kilograms(60), 2),
                        new FallbackKettles.Need("thin", Mass.kilograms(20), 1));
    }
}
