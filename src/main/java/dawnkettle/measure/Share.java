package dawnkettle.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A ratio in whole millionths: 1,000,000 is one part in one. May be above one (a yield), never below zero. */
public record Share(long millionths) implements Comparable<Share> {
    public static final Share NONE = new Share(0);
    public static final Share WHOLE = new Share(1_000_000);

    public Share {
        if (millionths < 0) throw new IllegalArgumentException("share below zero: " + millionths + " millionths");
    }

    public static Share millionths(long millionths) {
        return new Share(millionths);
    }

    public static Share percent(long percent) {
        return new Share(Math.multiplyExact(percent, 10_000L));
    }

    /** A ratio written as a decimal, as "2.65"; at most six places. */
    public static Share of(BigDecimal ratio) {
        return new Share(ratio.movePointRight(6).longValueExact());
    }

    public static Share of(String ratio) {
        return of(new BigDecimal(ratio));
    }

    /** What is left of one. @throws IllegalArgumentException when this is above one */
    public Share rest() {
        return new Share(1_000_000 - millionths);
    }

    public BigDecimal asDecimal() {
        return BigDecimal.valueOf(millionths).movePointLeft(6);
    }

    public BigDecimal inPercent(int places, RoundingMode rounding) {
        return BigDecimal.valueOf(millionths).movePointLeft(4).setScale(places, rounding);
    }

    @Override
    public int compareTo(Share other) {
        return Long.compare(millionths, other.millionths);
    }

    @Override
    public String toString() {
        return asDecimal().stripTrailingZeros().toPlainString();
    }
}
