package dawnkettle.shop;

import dawnkettle.measure.Mass;

/**
 * How large one batch may be: dry beans, or for a recipe made from another the mass of that other.
 *
 * @param step handy weights: a batch is {@code least} plus whole steps
 * @param directSteam whether steam is blown into the slurry, so that its water is part of the grinding water
 */
public record Kettle(Mass least, Mass most, Mass step, boolean directSteam) {
    /** One that is heated through its wall. */
    public Kettle(Mass least, Mass most, Mass step) {
        this(least, most, step, false);
    }

    public Kettle {
        if (least.isZero() || most.compareTo(least) < 0 || step.isZero())
            throw new IllegalArgumentException("a kettle needs 0 < least <= most and a step above 0");
        if (most.minus(least).milligrams() % step.milligrams() != 0)
            throw new IllegalArgumentException("most must be least plus whole steps");
    }
}
