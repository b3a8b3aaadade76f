package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Volume;
import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NetQuantityTest {
    // By arithmetic on 1 lb = 0.45359237 kg: 12.5 kg are 27.5577… lb, half-up 27.6 would say too much.
    @ParameterizedTest
    @CsvSource({
        "12500, 12.5 kg (27.5 lb)",
        "340, 340 g (11.9 oz)",
        "1000, 1 kg (2.2 lb)",
        "5000, 5 kg (11 lb)",
        "95, 95 g (3.3 oz)",
        "453, 453 g (15.9 oz)",
        "454, 454 g (1 lb)",
        "10896, 10.896 kg (24 lb)"
    })
    void mass_is_said_in_both_systems(long grams, String said) {
        assertThat(NetQuantity.of(Mass.grams(grams), false)).isEqualTo(said);
    }

    // 1 US gallon = 3.785411784 L; 946 ml are 31.98… fl oz (by arithmetic)
    @ParameterizedTest
    @CsvSource({
        "946, 31.9 fl oz (946 ml)",
        "1000, 33.8 fl oz (1 L)",
        "3785, 127 fl oz (3.785 L)",
        "5000, 1.32 gal (5 L)"
    })
    void volume_is_said_in_both_systems(long millilitres, String said) {
        assertThat(NetQuantity.of(Volume.millilitres(millilitres), true)).isEqualTo(said);
    }

    @Property
    void neither_system_ever_says_more_than_there_is(@ForAll @LongRange(min = 1, max = 60_000_000) long milligrams) {
        String[] said = NetQuantity.of(Mass.milligrams(milligrams), false).split("[ ()]+");
        BigDecimal there = BigDecimal.valueOf(milligrams);
        assertThat(inMilligrams(said[0], said[1])).isLessThanOrEqualTo(there);
        assertThat(inMilligrams(said[2], said[3])).isLessThanOrEqualTo(there);
    }

    private static BigDecimal inMilligrams(String amount, String unit) {
        String milligrams = switch (unit) {
            case "g" -> "1000";
            case "kg" -> "1000000";
            case "oz" -> "28349.523125";
            default -> "453592.37";
        };
        return new BigDecimal(amount).multiply(new BigDecimal(milligrams));
    }
}
