package dawnkettle.cost;

import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * A lot of a material as it came in.
 *
 * @param units in the material's own unit, above zero
 * @param paid for all of it
 */
public record Receipt(String material, String lot, LocalDate date, BigDecimal units, Money paid) {
    public Receipt {
        if (units.signum() <= 0) throw new IllegalArgumentException("lot " + lot + " came with nothing in it");
    }

    /** What one unit cost, in minor units and parts of them. */
    BigDecimal each() {
        return BigDecimal.valueOf(paid.minor()).divide(units, UnitPrice.CARRIED, java.math.RoundingMode.HALF_EVEN);
    }

    /** What was left of a lot, by the scale, at the end of a day. */
    public record Counted(String material, String lot, LocalDate date, BigDecimal left) {}
}
