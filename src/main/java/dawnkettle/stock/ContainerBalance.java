package dawnkettle.stock;

import dawnkettle.shop.Shop;
import dawnkettle.stock.Web.Handed;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Returnable containers of a product at a customer's: what went out with goods or by itself, what came back, and what a
 * count there found otherwise.
 *
 * @param difference what counts changed, below zero where fewer were found
 */
public record ContainerBalance(String customer, String product, int out, int back, int difference) {
    /** What should be there now. */
    public int there() {
        return out - back + difference;
    }

    private record Event(Instant at, String customer, String product, Change change) {}

    private interface Change {
        ContainerBalance apply(ContainerBalance before);
    }

    /** Of every customer and product that ever had any, in their order. A pack of a product with a deposit is one. */
    public static List<ContainerBalance> of(Shop shop, Collection<Handed> handed, List<Recorded> records) {
        List<Event> events = new ArrayList<>();
        for (Handed one : handed)
            if (one.gone()
                    && shop.findProduct(one.product())
                            .filter(product -> product.packing().deposit().minor() > 0)
                            .isPresent())
                events.add(new Event(
                        one.day().atStartOfDay(shop.house().zone()).toInstant(),
                        one.customer(),
                        one.product(),
                        before -> before.plus(one.packs(), 0, 0)));
        for (Recorded one : records) event(one, events);
        Map<String, ContainerBalance> balances = new TreeMap<>();
        events.stream()
                .sorted(Comparator.comparing(Event::at))
                .forEach(event -> balances.merge(
                        event.customer() + " " + event.product(),
                        event.change().apply(new ContainerBalance(event.customer(), event.product(), 0, 0, 0)),
                        (before, first) -> event.change().apply(before)));
        return List.copyOf(balances.values());
    }

    private static void event(Recorded one, List<Event> events) {
        if (one.fact() instanceof Fact.Returned back && back.what() == Fact.Returned.What.CONTAINERS)
            events.add(new Event(
                    one.happenedAt(), back.customer(), back.product(), before -> before.plus(0, back.count(), 0)));
        if (one.fact() instanceof Fact.Containers f)
            events.add(new Event(
                    one.happenedAt(),
                    f.customer(),
                    f.product(),
                    before -> f.way() == Fact.Containers.Way.OUT
                            ? before.plus(f.count(), 0, 0)
                            : before.plus(0, 0, f.count() - before.there())));
    }

    private ContainerBalance plus(int more, int less, int counted) {
        return new ContainerBalance(customer, product, out + more, back + less, difference + counted);
    }
}
