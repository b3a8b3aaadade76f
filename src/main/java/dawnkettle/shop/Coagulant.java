package dawnkettle.shop;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * What sets the milk.
 *
 * @param material code of the material, which names the hydrate or the strength of a solution
 * @param perMilk mass of the salt per mass of milk
 * @param strength share of the salt in what is weighed out: one for the salt itself, less for a solution
 */
public record Coagulant(String material, Share perMilk, Share strength) {
    public Coagulant {
        if (strength.equals(Share.NONE) || strength.compareTo(Share.WHOLE) > 0)
            throw new IllegalArgumentException("a coagulant's strength lies above 0 and is at most 1, not " + strength);
    }

    /** The salt itself. */
    public Coagulant(String material, Share perMilk) {
        this(material, perMilk, Share.WHOLE);
    }

    /** What is weighed out for so much milk. */
    public Mass dose(Mass milk) {
        Mass salt = milk.times(perMilk, RoundingMode.HALF_UP);
        if (strength.equals(Share.WHOLE)) return salt;
        return Mass.milligrams(BigDecimal.valueOf(salt.milligrams())
                .divide(strength.asDecimal(), MathContext.DECIMAL64)
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact());
    }
}
