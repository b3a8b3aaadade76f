package dawnkettle.shop;

import dawnkettle.measure.Share;

/**
 * What sets the milk.
 *
 * @param material code of the material, which names the hydrate or the strength of a solution
 * @param perMilk mass of it per mass of milk
 */
public record Coagulant(String material, Share perMilk) {}
