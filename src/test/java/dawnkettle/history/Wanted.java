package dawnkettle.history;

import dawnkettle.shop.Route;
import java.time.LocalDate;
import java.util.Comparator;

/** Packs that a customer wanted of a product on a day, from all orders together. */
record Wanted(Key key, String route, LocalDate making, int packs) {
    /** Who wanted what when. */
    record Key(LocalDate delivery, String customer, String product) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            return Comparator.comparing(Key::delivery)
                    .thenComparing(Key::customer)
                    .thenComparing(Key::product)
                    .compare(this, other);
        }
    }

    static Wanted of(Key key, Route route, LocalDate making, int packs) {
        return new Wanted(key, route.code(), making, packs);
    }

    Wanted plus(int more) {
        return new Wanted(key, route, making, packs + more);
    }
}
