package dawnkettle.history;

import dawnkettle.shop.Material;
import java.time.LocalDate;

/** A supplier's lot of a material and what is left of it. */
final class Bought {
    final Material material;
    final String lot;
    final LocalDate on;
    final long grams;
    /** In minor units. */
    final long paid;

    private long left;

    private Bought(Material material, LocalDate on, long grams, long paid) {
        this.material = material;
        this.lot = lotCode(material, on);
        this.on = on;
        this.grams = grams;
        this.paid = paid;
        this.left = grams;
    }

    /** @param dearness of a pack, 1 at the standard price */
    static Bought of(Material material, LocalDate on, int packs, double dearness) {
        long paid = Math.round(packs * material.price().minor() * dearness);
        return new Bought(material, on, 1_000L * packs * material.packSize(), paid);
    }

    private static String lotCode(Material material, LocalDate on) {
        String code = material.code().substring(material.code().indexOf('-') + 1);
        return code + "-" + on.toString().substring(2).replace("-", "");
    }

    long take(long wanted) {
        long taken = Math.min(wanted, left);
        left -= taken;
        return taken;
    }

    long left() {
        return left;
    }
}
