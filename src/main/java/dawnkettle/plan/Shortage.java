package dawnkettle.plan;

/** Packs of a product that can't be had, and why, in the shop's words. */
public record Shortage(String product, int packs, String reason) {}
