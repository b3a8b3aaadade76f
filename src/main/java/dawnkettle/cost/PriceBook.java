package dawnkettle.cost;

import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
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

    private Optional<ListPrice> find(String list, Product product, LocalDate day) {
        return prices.stream()
                .filter(price -> price.priceList().equals(list)
                        && price.product().equals(product.code())
                        && !price.from().isAfter(day))
                .reduce((one, other) -> other.from().isBefore(one.from()) ? one : other);
    }

    /** Of each list and product the price of a day, and those that follow it; the everyday price of products without a date. */
    public List<ListPrice> standing(LocalDate day) {
        List<ListPrice> standing = new ArrayList<>();
        for (String list : lists())
            for (Product product : shop.products()) {
                Optional<ListPrice> now = find(list, product, day);
                if (now.isEmpty() && list.equals(EVERYDAY))
                    standing.add(new ListPrice(list, product.code(), product.price(), LocalDate.EPOCH));
                now.ifPresent(standing::add);
                prices.stream()
                        .filter(price -> price.priceList().equals(list)
                                && price.product().equals(product.code())
                                && price.from().isAfter(day))
                        .sorted(Comparator.comparing(ListPrice::from))
                        .forEach(standing::add);
            }
        return standing;
    }

    /** Whether a list has a price of its own for a product. */
    public boolean names(String list, Product product, LocalDate day) {
        return find(list, product, day).isPresent();
    }

    Shop shop() {
        return shop;
    }
}
