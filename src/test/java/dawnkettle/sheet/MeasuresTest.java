package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.shop.House;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class MeasuresTest {
    private static final Words WORDS = Words.of(List.of("en"));
    private static final Measures METRIC = new Measures(WORDS, House.Units.METRIC);
    private static final Measures US = new Measures(WORDS, House.Units.US_CUSTOMARY);

    @Test
    void kilograms_show_every_gram_and_no_more() {
        assertThat(METRIC.mass(Mass.grams(27_500))).isEqualTo("27.5 kg");
        assertThat(METRIC.mass(Mass.kilograms(100))).isEqualTo("100 kg");
        assertThat(METRIC.mass(Mass.grams(1))).isEqualTo("0.001 kg");
        assertThat(METRIC.dose(Mass.milligrams(312_500))).isEqualTo("312 g");
    }

    @Test
    void a_sixty_pound_sack_is_sixty_pounds() {
        // 60 lb of exactly 0.45359237 kg (NIST SP 811, from memory) are 27.2155422 kg.
        assertThat(US.mass(Mass.kilograms(new BigDecimal("27.215542")))).isEqualTo("60 lb");
        assertThat(US.dose(Mass.milligrams(28_350))).isEqualTo("1 oz (28 g)");
    }

    @Test
    void five_us_gallons_and_boiling_point() {
        // 231 cubic inches: 3.785411784 L (NIST SP 811, from memory).
        assertThat(US.water(Mass.grams(18_927))).isEqualTo("5 gal");
        assertThat(US.temperature(Celsius.degrees(100))).isEqualTo("212 °F");
        assertThat(METRIC.temperature(Celsius.tenths(185))).isEqualTo("18.5 °C");
    }

    @Test
    void the_hour_that_comes_twice_says_which_it_is() {
        // United States, 2026: clocks go back at 02:00 on 1 November (Energy Policy Act of 2005, from memory).
        Dates dates = new Dates(WORDS, ZoneId.of("America/New_York"));
        assertThat(dates.time(Instant.parse("2026-11-01T05:30:00Z"))).isEqualTo("01:30 EDT");
        assertThat(dates.time(Instant.parse("2026-11-01T06:30:00Z"))).isEqualTo("01:30 EST");
        assertThat(dates.time(Instant.parse("2026-11-01T08:30:00Z"))).isEqualTo("03:30");
        assertThat(dates.onLabel(LocalDate.of(2027, 1, 31))).isEqualTo("31 JAN 2027");
        assertThat(dates.full(LocalDate.of(2027, 1, 31))).isEqualTo("Sunday 31 January 2027");
    }
}
