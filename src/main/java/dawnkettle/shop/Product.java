package dawnkettle.shop;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;

/**
 * Something the shop sells.
 *
 * @param code short code, as "FIRM-12"
 * @param recipe code of the recipe it is made by
 * @param price price of one pack on the everyday list
 * @param leadDays working days it is made before the earliest day that its route allows; 0 for most
 * @param par packs that should lie ready for people who walk in
 */
public record Product(
        String code,
        String name,
        String recipe,
        Packing packing,
        Keeping keeping,
        Wording wording,
        Money price,
        int leadDays,
        int par) {
    public Mass net() {
        return packing.net();
    }

    public int packsInCase() {
        return packing.packsInCase();
    }
}
