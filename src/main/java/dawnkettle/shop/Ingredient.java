package dawnkettle.shop;

import dawnkettle.measure.Share;

/** Something added besides beans and coagulant: its mass per mass of product. */
public record Ingredient(String material, Share perProduct) {}
