package dawnkettle.shop;

import dawnkettle.measure.Money;

/**
 * Something that is bought.
 *
 * @param kind what it is for
 * @param soakGroup for beans: the soak group they serve; otherwise empty
 * @param unit what {@code packSize}, {@code reorder} and prices count in
 * @param packSize units in the supplier's pack (a sack, a drum)
 * @param leadDays days from order to delivery
 * @param reorder units at or below which more should be ordered
 * @param price standard price of one {@code packSize}
 */
public record Material(
        String code,
        String name,
        Kind kind,
        String soakGroup,
        Unit unit,
        int packSize,
        int leadDays,
        int reorder,
        Money price) {
    /** What a material is for. */
    public enum Kind {
        BEANS,
        COAGULANT,
        OIL,
        FLAVOUR,
        PACKAGING,
        OTHER
    }

    /** What a material is counted in. */
    public enum Unit {
        KILOGRAM,
        LITRE,
        PIECE
    }
}
