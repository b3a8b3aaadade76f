package dawnkettle.stock;

import dawnkettle.measure.Mass;
import java.time.LocalDate;

/** Beans (or another bought material) of one supplier's lot that are still here, the oldest used first. */
public record BeanLot(String lot, String material, Mass left, LocalDate receivedOn) {}
