package dawnkettle.book;

import dawnkettle.book.PairItems.Item;
import dawnkettle.book.Sense.Kind;
import dawnkettle.shop.Product;
import java.math.BigDecimal;
import java.util.Optional;

/** Reckons an item's product and packs, and says why where it cannot. */
final class Reckon {
    /** More than three times what the customer ever stood for, more than a case and more than this is asked. */
    private static final int DOZEN = 12;

    /** Of the most packs that the customer ever stood for (common practice, no source). */
    private static final int TIMES_THE_HABIT = 3;

    private static final BigDecimal MOST = BigDecimal.valueOf(10_000);

    private final OrderReading context;
    private final FindProduct products;

    Reckon(OrderReading context, FindProduct products) {
        this.context = context;
        this.products = products;
    }

    /** Packs of a product, or why they are not certain. */
    record Reckoned(String product, int packs, String why) {
        static Reckoned doubt(String why) {
            return new Reckoned("", 0, why);
        }

        boolean isCertain() {
            return why.isEmpty();
        }
    }

    Reckoned product(Item item) {
        Optional<Product> product = products.of(item.product());
        return product.map(found -> new Reckoned(found.code(), 0, ""))
                .orElse(Reckoned.doubt("Which product is meant? Please write its name and size."));
    }

    Reckoned packs(Item item) {
        Optional<Product> found = products.of(item.product());
        if (found.isEmpty()) return product(item);
        Product product = found.get();
        BigDecimal packs = new BigDecimal(item.figure());
        boolean sizeAlone = item.product().stream().noneMatch(s -> s.is(Kind.SIZE))
                && products.isSize(item.figure(), item.product());
        if (sizeAlone) return Reckoned.doubt("Is " + item.figure() + " the size or the packs? Please write both.");
        if (item.product().stream().anyMatch(s -> s.is(Kind.CASE))) {
            if (product.packsInCase() == 1)
                return Reckoned.doubt("It does not come in cases; how many packs are meant?");
            packs = packs.multiply(BigDecimal.valueOf(product.packsInCase()));
        }
        if (packs.compareTo(MOST) >= 0 || packs.stripTrailingZeros().scale() > 0 || packs.signum() == 0)
            return Reckoned.doubt("How many packs are meant?");
        int whole = packs.intValueExact();
        return isFar(product, whole)
                ? Reckoned.doubt("That is " + whole + " packs, far more than usual; is it meant?")
                : new Reckoned(product.code(), whole, "");
    }

    private boolean isFar(Product product, int packs) {
        int most = context.usual().getOrDefault(product.code(), 0);
        return packs > TIMES_THE_HABIT * most && packs > product.packsInCase() && packs > DOZEN;
    }
}
