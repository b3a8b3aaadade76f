package dawnkettle.cost;

import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** What a pack costs a customer on a day: by the latest price of the customer's list, else the everyday price. */
public final class PriceBook {
    private static final String EVERYDAY = "everyday";

    private final Shop shop;
    private final List<ListPrice> prices;

    /** @param told prices that were written down since, besides those of the shop */
    public PriceBook(Shop shop, List<ListPrice> told) {
        this.shop = shop;
        this.prices = Stream.concat(shop.prices().stream(), told.stream()).toList();
    }

    /** All lists, the everyday one first. */
    public List<String> lists() {
        List<String> lists = new ArrayList<>(List.of(EVERYDAY));
        prices.stream().map(ListPrice::priceList).distinct().sorted().forEach(list -> {
            if (!lists.contains(list)) lists.add(list);
        });
        return lists;
    }

    public Money of(Customer customer, Product product, LocalDate day) {
        return of(customer.priceList(), product, day);
    }

    public Money of(String list, Product product, LocalDate day) {
        return find(list, product, day)
                .or(() -> find(EVERYDAY, product, day))
                .map(ListPrice::price)
                .orElse(product.price());
    }

    private java.util.Optional<ListPrice> find(String list, Product product, LocalDate day) {
        return prices.stream()
                .filter(price -> price.priceList().equals(list)
                        && price.product().equals(product.code())
                        && !price.from().isAfter(day))
                .reduce((one, other) -> other.from().isBefore(one.from()) ? one : other);
    }

    /** Whether a list has a price of its own for a product. */
    public boolean names(String list, Product product, LocalDate day) {
        return find(list, product, day).isPresent();
    }

    Shop shop() {
        return shop;
    }
}
