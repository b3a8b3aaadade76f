package dawnkettle.label;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Volume;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Net quantity in both systems of units. The metric figure is exact to the gram or millilitre, rounded down; the other is
 * cut to three figures, two below 100 g (practice after 16 CFR 500.19(b), read; not to overstate is from memory).
 */
public final class NetQuantity {
    private static final Mass HECTOGRAM = Mass.grams(100);
    private static final Mass KILOGRAM = Mass.kilograms(1);
    private static final BigDecimal OUNCES_A_POUND = BigDecimal.valueOf(16);

    /** 128 US fluid ounces a US gallon (definition, from memory). */
    private static final BigDecimal FLUID_OUNCES_A_GALLON = BigDecimal.valueOf(128);

    private NetQuantity() {}

    public static String of(Mass net, boolean usUnitsFirst) {
        return joined(metric(net), us(net), usUnitsFirst);
    }

    public static String of(Volume net, boolean usUnitsFirst) {
        return joined(metric(net), us(net), usUnitsFirst);
    }

    private static String joined(String metric, String us, boolean usUnitsFirst) {
        return usUnitsFirst ? us + " (" + metric + ")" : metric + " (" + us + ")";
    }

    private static String metric(Mass net) {
        return net.compareTo(KILOGRAM) < 0
                ? net.inGrams(RoundingMode.DOWN) + " g"
                : plain(net.inKilograms(3, RoundingMode.DOWN)) + " kg";
    }

    private static String us(Mass net) {
        BigDecimal pounds = net.inPounds(9, RoundingMode.DOWN);
        int figures = net.compareTo(HECTOGRAM) < 0 ? 2 : 3;
        return pounds.compareTo(BigDecimal.ONE) < 0
                ? cut(pounds.multiply(OUNCES_A_POUND), figures) + " oz"
                : cut(pounds, figures) + " lb";
    }

    private static String metric(Volume net) {
        return net.millilitres() < 1_000 ? net.millilitres() + " ml" : plain(net.inLitres(3, RoundingMode.DOWN)) + " L";
    }

    private static String us(Volume net) {
        BigDecimal gallons = net.inUsGallons(12, RoundingMode.DOWN);
        return gallons.compareTo(BigDecimal.ONE) < 0
                ? cut(gallons.multiply(FLUID_OUNCES_A_GALLON), 3) + " fl oz"
                : cut(gallons, 3) + " gal";
    }

    private static String cut(BigDecimal amount, int figures) {
        return plain(amount.round(new MathContext(figures, RoundingMode.DOWN)));
    }

    private static String plain(BigDecimal amount) {
        BigDecimal stripped = amount.stripTrailingZeros();
        return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
    }
}
