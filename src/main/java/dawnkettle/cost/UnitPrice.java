package dawnkettle.cost;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;

/** What was paid for how much, so that a price a kilogram needs no rounding: as 38.50 for 25 kg. */
public record UnitPrice(Money paid, Mass mass) {
    /** Decimals of a cent that are carried along until a week's sums are rounded, once. */
    static final int CARRIED = 12;

    public UnitPrice {
        if (mass.isZero()) throw new IllegalArgumentException("a price is paid for more than nothing");
        if (paid.isNegative()) throw new IllegalArgumentException("a price below zero: " + paid);
    }

    /** What {@code bought} costs, in minor units and parts of them. */
    BigDecimal minorOf(Mass bought) {
        return BigDecimal.valueOf(paid.minor())
                .multiply(BigDecimal.valueOf(bought.milligrams()))
                .divide(BigDecimal.valueOf(mass.milligrams()), CARRIED, RoundingMode.HALF_EVEN);
    }
}
