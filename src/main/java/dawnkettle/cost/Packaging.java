package dawnkettle.cost;

import dawnkettle.cost.MadeDay.Used;
import dawnkettle.shop.PackUse;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.util.List;

/** What packs are packed in. A part case takes a case of its own. */
final class Packaging {
    private Packaging() {}

    static List<Used> of(Shop shop, String product, long packs) {
        int inCase = shop.product(product).packsInCase();
        long cases = (packs + inCase - 1) / inCase;
        return shop.costs().details().packing().stream()
                .filter(use -> use.product().equals(product))
                .map(use -> used(use, use.per() == PackUse.Per.PACK ? packs : cases))
                .toList();
    }

    private static Used used(PackUse use, long count) {
        return new Used(use.material(), use.pieces().asDecimal().multiply(BigDecimal.valueOf(count)));
    }
}
