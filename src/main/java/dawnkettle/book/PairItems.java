package dawnkettle.book;

import dawnkettle.book.Sense.Kind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Pairs the quantities of a few words with their products: "6 firm 8 medium", or "firm 6 medium 8". */
final class PairItems {
    private static final Kind[] OF_PRODUCT = {
        Kind.KIND, Kind.FORM, Kind.UNIT, Kind.SIZE, Kind.CODE, Kind.CASE, Kind.GRADE
    };
    private final FindProduct products;
    private final List<Part> parts = new ArrayList<>();

    /** A quantity, or words of a product. @param size whether it can also be a size, as 400 behind "firm" */
    private record Part(boolean quantity, List<Sense> senses, boolean size) {
        String figure() {
            return senses.get(0).value();
        }

        boolean names() {
            return senses.stream().anyMatch(s -> s.is(Kind.KIND, Kind.CODE));
        }
    }

    /** Words of a product with their quantity; the figure is empty where only a product is named. */
    record Item(String figure, List<Sense> product) {
        int from() {
            return product.get(0).from();
        }
    }

    private PairItems(FindProduct products) {
        this.products = products;
    }

    /** Empty where it is not certain which quantity is whose. */
    static Optional<List<Item>> of(List<Sense> chunk, FindProduct products) {
        PairItems pair = new PairItems(products);
        pair.split(chunk);
        pair.settleSizes();
        pair.mergeProducts();
        return pair.pairs();
    }

    private void split(List<Sense> chunk) {
        Sense before = new Sense(Kind.STOP, "", 0, 0);
        for (int i = 0; i < chunk.size(); i++) {
            Sense sense = chunk.get(i);
            if (sense.is(Kind.NUMBER)) {
                boolean behind = before.is(Kind.KIND, Kind.FORM) && products.isSize(sense.value(), lastProduct());
                parts.add(new Part(true, List.of(sense), behind));
            } else if (sense.is(Kind.A)
                    && i + 1 < chunk.size()
                    && chunk.get(i + 1).is(OF_PRODUCT))
                parts.add(new Part(true, List.of(sense.to(Kind.NUMBER, "1")), false));
            else if (sense.is(OF_PRODUCT)) addProduct(sense);
            if (!sense.is(Kind.BRACKET, Kind.NOISE)) before = sense;
        }
    }

    private List<Sense> lastProduct() {
        return parts.get(parts.size() - 1).senses();
    }

    private void addProduct(Sense sense) {
        if (parts.isEmpty() || parts.get(parts.size() - 1).quantity())
            parts.add(new Part(false, new ArrayList<>(List.of(sense)), false));
        else parts.get(parts.size() - 1).senses().add(sense);
    }

    /** Behind a product that has its quantity already, or before one, a figure that can be a size is one. */
    private void settleSizes() {
        boolean quantityFirst = !parts.isEmpty() && parts.get(0).quantity();
        for (int i = 0; i < parts.size(); i++) {
            boolean before = i + 1 < parts.size() && parts.get(i + 1).quantity();
            if (!parts.get(i).size() || !quantityFirst && !before) continue;
            Sense size = parts.get(i).senses().get(0);
            parts.set(i, new Part(false, new ArrayList<>(List.of(size.to(Kind.SIZE, size.value()))), false));
        }
    }

    private void mergeProducts() {
        for (int i = parts.size() - 1; i > 0; i--)
            if (!parts.get(i).quantity() && !parts.get(i - 1).quantity()) {
                parts.get(i - 1).senses().addAll(parts.get(i).senses());
                parts.remove(i);
            }
    }

    private Optional<List<Item>> pairs() {
        if (parts.size() == 1 && !parts.get(0).quantity())
            return Optional.of(List.of(new Item("", parts.get(0).senses())));
        if (parts.size() == 3
                && !parts.get(0).quantity()
                && parts.get(1).quantity()
                && !parts.get(2).quantity()
                && !parts.get(2).names()) return Optional.of(List.of(around()));
        if (parts.size() % 2 != 0) return Optional.empty();
        List<Item> items = new ArrayList<>();
        for (int i = 0; i < parts.size(); i += 2) {
            Part first = parts.get(i);
            Part second = parts.get(i + 1);
            if (first.quantity() == second.quantity()) return Optional.empty();
            Part quantity = first.quantity() ? first : second;
            if (quantity.size()) return Optional.empty();
            items.add(new Item(quantity.figure(), first.quantity() ? second.senses() : first.senses()));
        }
        return Optional.of(items);
    }

    /** "medium 3 buckets" */
    private Item around() {
        List<Sense> product = new ArrayList<>(parts.get(0).senses());
        product.addAll(parts.get(2).senses());
        return new Item(parts.get(1).figure(), product);
    }
}
