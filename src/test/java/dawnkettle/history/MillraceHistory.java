package dawnkettle.history;

import dawnkettle.conf.Configuration;
import dawnkettle.shop.Material;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Half a year of an invented shop, made up by chance that falls the same each time. */
final class MillraceHistory {
    final Shop shop;
    final OrderBooks books;
    final Days days;
    final List<Storeroom> stores = new ArrayList<>();
    final Tubs tubs;

    MillraceHistory(Configuration conf) throws IOException {
        this.shop = conf.shop();
        this.books = new OrderBooks(conf, Path.of("conf/rehearsal/orders.csv"));
        this.days = new Days(shop, books);
        this.tubs = new Tubs(shop);
        Used used = new Used(shop, days.lots);
        for (Material material : shop.materials())
            if (material.unit() == Material.Unit.KILOGRAM)
                stores.add(new Storeroom(material, habit(material), used.of(material), shop.calendar()));
        for (Storeroom store : stores) if (store.isOfBeans()) store.taken.forEach(tubs::fill);
    }

    /** How much of it is bought at once: about a week of yellow beans, some weeks of the rest. */
    private static Storeroom.Habit habit(Material material) {
        return switch (material.code()) {
            case "BEAN-YEL" -> new Storeroom.Habit(120, 700, 300);
            case "BEAN-MILK" -> new Storeroom.Habit(20, 90, 60);
            default ->
                new Storeroom.Habit(
                        Math.max(1, 4 * material.reorder() / material.packSize()),
                        material.reorder(),
                        material.reorder());
        };
    }
}
