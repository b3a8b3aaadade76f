package dawnkettle.stock;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Volume;
import dawnkettle.shop.Material;

/** How much of a bought material, in the smallest of its unit: milligrams, millilitres or pieces. */
public record Quantity(long smallest, Material.Unit unit) {
    public Quantity {
        if (smallest < 0) throw new IllegalArgumentException("quantity below zero: " + smallest);
    }

    public static Quantity of(Mass mass) {
        return new Quantity(mass.milligrams(), Material.Unit.KILOGRAM);
    }

    public static Quantity of(Volume volume) {
        return new Quantity(volume.millilitres(), Material.Unit.LITRE);
    }

    public static Quantity pieces(long count) {
        return new Quantity(count, Material.Unit.PIECE);
    }
}
