package dawnkettle.shop;

import dawnkettle.measure.Mass;

/**
 * How large one batch may be: dry beans, or for a recipe made from another the mass of that other.
 *
 * @param step handy weights: a batch is {@code least} plus whole steps
 */
public record Kettle(Mass least, Mass most, Mass step) {
    public Kettle {
        if (least.isZero() || most.compareTo(least) < 0 || step.isZero())
            throw new IllegalArgumentException("a kettle needs 0 < least <= most and a step above 0");
        if (most.minus(least).milligrams() % step.milligrams() != 0)
            throw new IllegalArgumentException("most must be least plus whole steps");
    }
}
