package dawnkettle.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A temperature in whole tenths of a degree Celsius. */
public record Celsius(int tenths) implements Comparable<Celsius> {
    /** 0 °C is 273.15 K, by definition of the scale (from memory). */
    private static final double KELVIN_AT_ZERO = 273.15;

    public static Celsius tenths(int tenths) {
        return new Celsius(tenths);
    }

    public static Celsius degrees(int degrees) {
        return new Celsius(Math.multiplyExact(degrees, 10));
    }

    public static Celsius of(BigDecimal degrees) {
        return new Celsius(degrees.movePointRight(1).intValueExact());
    }

    public double degrees() {
        return tenths / 10.0;
    }

    public double kelvin() {
        return degrees() + KELVIN_AT_ZERO;
    }

    public BigDecimal inFahrenheit(int places, RoundingMode rounding) {
        return BigDecimal.valueOf(tenths * 18L + 3200L).movePointLeft(2).setScale(places, rounding);
    }

    @Override
    public int compareTo(Celsius other) {
        return Integer.compare(tenths, other.tenths);
    }

    @Override
    public String toString() {
        return BigDecimal.valueOf(tenths, 1).toPlainString() + " °C";
    }
}
