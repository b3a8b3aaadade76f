package dawnkettle.sheet;

import static java.math.RoundingMode.HALF_EVEN;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.shop.House;
import java.math.BigDecimal;

/** Masses, volumes and temperatures as the sheets write them: computed from the exact figure, rounded once, at the end. */
final class Measures {
    /** Exact: 231 cubic inches of 25.4 mm, as of a US gallon (definition, from memory). */
    private static final BigDecimal LITRES_A_US_GALLON = new BigDecimal("3.785411784");

    private static final int OUNCES_A_POUND = 16;

    private final Words words;
    private final boolean metric;

    Measures(Words words, House.Units units) {
        this.words = words;
        this.metric = units == House.Units.METRIC;
    }

    /** Beans and product: kilograms to the gram, or pounds to a hundredth. */
    String mass(Mass mass) {
        return metric ? kilograms(mass) : pounds(mass);
    }

    /** To the whole kilogram or pound, where a picture shows the rest. */
    String aboutMass(Mass mass) {
        return metric
                ? words.first(Word.KG, plain(mass.inKilograms(0, HALF_EVEN)))
                : words.first(Word.LB, plain(mass.inPounds(0, HALF_EVEN)));
    }

    /** The same as a figure and its unit. */
    Cell.Figure figure(Mass mass, Lettering lettering) {
        String[] parts = mass(mass).split(" ");
        return new Cell.Figure(parts[0], parts[1], lettering);
    }

    /** What is weighed on the small scale: whole grams, or ounces to a hundredth with the grams. */
    String dose(Mass mass) {
        String grams = words.first(
                Word.GRAM,
                plain(mass.inKilograms(6, HALF_EVEN).movePointRight(3).setScale(0, HALF_EVEN)));
        if (metric) return grams;
        BigDecimal ounces = mass.times(OUNCES_A_POUND).inPounds(2, HALF_EVEN);
        return words.first(Word.BOTH, words.first(Word.OUNCE, plain(ounces)), grams);
    }

    /** Water, one litre a kilogram: 0.2 % off at 20 °C, less than a bucket's mark shows (from memory). */
    String water(Mass water) {
        BigDecimal litres = water.inKilograms(6, HALF_EVEN);
        if (metric) return words.first(Word.LITRE, plain(litres.setScale(1, HALF_EVEN)));
        return words.first(Word.GALLON, plain(litres.divide(LITRES_A_US_GALLON, 1, HALF_EVEN)));
    }

    String temperature(Celsius celsius) {
        if (metric) return words.first(Word.CELSIUS, plain(BigDecimal.valueOf(celsius.tenths(), 1)));
        return words.first(Word.FAHRENHEIT, plain(celsius.inFahrenheit(0, HALF_EVEN)));
    }

    private String kilograms(Mass mass) {
        return words.first(Word.KG, plain(mass.inKilograms(3, HALF_EVEN)));
    }

    private String pounds(Mass mass) {
        return words.first(Word.LB, plain(mass.inPounds(2, HALF_EVEN)));
    }

    private static String plain(BigDecimal number) {
        BigDecimal bare = number.stripTrailingZeros();
        return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
    }
}
