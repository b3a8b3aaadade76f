package dawnkettle.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;

/** A mass in whole milligrams, never negative. {@link #parse} reads what {@link #toString} writes. */
public record Mass(long milligrams) implements Comparable<Mass> {
    public static final Mass ZERO = new Mass(0);

    /** Exact by the international agreement of 1959 (from memory): 1 lb = 0.45359237 kg. */
    private static final BigDecimal MILLIGRAMS_A_POUND = new BigDecimal("453592.37");

    public Mass {
        if (milligrams < 0) throw new IllegalArgumentException("mass below zero: " + milligrams + " mg");
    }

    public static Mass milligrams(long milligrams) {
        return new Mass(milligrams);
    }

    public static Mass grams(long grams) {
        return new Mass(Math.multiplyExact(grams, 1_000L));
    }

    public static Mass kilograms(long kilograms) {
        return new Mass(Math.multiplyExact(kilograms, 1_000_000L));
    }

    /** Kilograms written as a decimal, as "12.5"; at most six places. */
    public static Mass kilograms(BigDecimal kilograms) {
        return new Mass(kilograms.movePointRight(6).longValueExact());
    }

    public static Mass sum(Collection<Mass> masses) {
        return masses.stream().reduce(ZERO, Mass::plus);
    }

    /** Reads "1200 g", "1.2 kg" or "350 mg". */
    public static Mass parse(String text) {
        String[] parts = text.strip().split("\\s+");
        if (parts.length != 2) throw new IllegalArgumentException("\"" + text + "\" is not a mass");
        int shift = switch (parts[1]) {
            case "kg" -> 6;
            case "g" -> 3;
            case "mg" -> 0;
            default -> throw new IllegalArgumentException("\"" + text + "\" is not a mass");
        };
        return new Mass(new BigDecimal(parts[0]).movePointRight(shift).longValueExact());
    }

    public Mass plus(Mass other) {
        return new Mass(Math.addExact(milligrams, other.milligrams));
    }

    /** @throws IllegalArgumentException when {@code other} is more than this */
    public Mass minus(Mass other) {
        return new Mass(Math.subtractExact(milligrams, other.milligrams));
    }

    /** This less {@code other}, or nothing where {@code other} is more. */
    public Mass minusOrZero(Mass other) {
        return new Mass(Math.max(0, milligrams - other.milligrams));
    }

    public Mass times(long count) {
        return new Mass(Math.multiplyExact(milligrams, count));
    }

    public Mass times(Share share, RoundingMode rounding) {
        return new Mass(BigDecimal.valueOf(milligrams)
                .multiply(BigDecimal.valueOf(share.millionths()))
                .movePointLeft(6)
                .setScale(0, rounding)
                .longValueExact());
    }

    /** How many whole {@code parts} fit. */
    public long dividedBy(Mass part) {
        return milligrams / part.milligrams;
    }

    public boolean isZero() {
        return milligrams == 0;
    }

    public long inGrams(RoundingMode rounding) {
        return BigDecimal.valueOf(milligrams)
                .movePointLeft(3)
                .setScale(0, rounding)
                .longValueExact();
    }

    /** Whole grams. @throws ArithmeticException where milligrams are left over */
    public long inGrams() {
        return inGrams(RoundingMode.UNNECESSARY);
    }

    public BigDecimal inKilograms(int places, RoundingMode rounding) {
        return BigDecimal.valueOf(milligrams).movePointLeft(6).setScale(places, rounding);
    }

    public BigDecimal inPounds(int places, RoundingMode rounding) {
        return BigDecimal.valueOf(milligrams).divide(MILLIGRAMS_A_POUND, places, rounding);
    }

    public static Mass min(Mass a, Mass b) {
        return a.milligrams <= b.milligrams ? a : b;
    }

    public static Mass max(Mass a, Mass b) {
        return a.milligrams >= b.milligrams ? a : b;
    }

    @Override
    public int compareTo(Mass other) {
        return Long.compare(milligrams, other.milligrams);
    }

    @Override
    public String toString() {
        return BigDecimal.valueOf(milligrams)
                        .movePointLeft(3)
                        .stripTrailingZeros()
                        .toPlainString() + " g";
    }
}
