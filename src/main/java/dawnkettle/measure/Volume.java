package dawnkettle.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A volume in whole millilitres, never negative. */
public record Volume(long millilitres) implements Comparable<Volume> {
    /** Exact: 231 cubic inches of 25.4 mm (definition, from memory). */
    private static final BigDecimal MILLILITRES_A_US_GALLON = new BigDecimal("3785.411784");

    public Volume {
        if (millilitres < 0) throw new IllegalArgumentException("volume below zero: " + millilitres + " ml");
    }

    public static Volume millilitres(long millilitres) {
        return new Volume(millilitres);
    }

    public static Volume litres(long litres) {
        return new Volume(Math.multiplyExact(litres, 1_000L));
    }

    public Volume times(long count) {
        return new Volume(Math.multiplyExact(millilitres, count));
    }

    public BigDecimal inLitres(int places, RoundingMode rounding) {
        return BigDecimal.valueOf(millilitres).movePointLeft(3).setScale(places, rounding);
    }

    public BigDecimal inUsGallons(int places, RoundingMode rounding) {
        return BigDecimal.valueOf(millilitres).divide(MILLILITRES_A_US_GALLON, places, rounding);
    }

    @Override
    public int compareTo(Volume other) {
        return Long.compare(millilitres, other.millilitres);
    }

    @Override
    public String toString() {
        return millilitres + " ml";
    }
}
