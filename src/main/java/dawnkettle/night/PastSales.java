package dawnkettle.night;

import dawnkettle.cost.PriceBook;
import dawnkettle.cost.Sale;
import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import dawnkettle.store.DeliveryRows;
import dawnkettle.store.Ledger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What went to customers, at what price, and what came back: as written down, and on days without a word as planned. */
final class PastSales {
    private final Ledger ledger;
    private final Shop shop;
    private final PriceBook prices;

    PastSales(Ledger ledger, Shop shop) {
        this.ledger = ledger;
        this.shop = shop;
        this.prices = new PriceBook(shop, told());
    }

    /** Prices of the shop's lists, and those that were written down since. */
    PriceBook prices() {
        return prices;
    }

    private List<ListPrice> told() {
        return ledger.records().all(Fact.Kind.PRICED).stream()
                .map(Recorded::fact)
                .map(Fact.Priced.class::cast)
                .map(priced -> new ListPrice(priced.priceList(), priced.product(), priced.price(), priced.from()))
                .toList();
    }

    /** Deliveries and credits of a stretch, by day. */
    List<Sale> sales(LocalDate fromInclusive, LocalDate untilExclusive) {
        List<Sale> sales = new ArrayList<>(delivered(fromInclusive, untilExclusive));
        Set<LocalDate> written = sales.stream().map(Sale::date).collect(Collectors.toSet());
        for (DeliveryRows.Planned one : ledger.deliveries().planned(fromInclusive, untilExclusive))
            if (!written.contains(one.date()))
                sale(one.date(), one.customer(), one.product())
                        .ifPresent(each -> sales.add(new Sale(
                                one.date(),
                                one.customer(),
                                one.product(),
                                one.lot().text(),
                                one.packs(),
                                each)));
        sales.addAll(credits(fromInclusive, untilExclusive));
        sales.sort(Comparator.comparing(Sale::date)
                .thenComparing(Sale::customer)
                .thenComparing(Sale::product)
                .thenComparing(Sale::lot));
        return sales;
    }

    private List<Sale> delivered(LocalDate fromInclusive, LocalDate untilExclusive) {
        List<Sale> sales = new ArrayList<>();
        for (Recorded recorded : ledger.records().all(Fact.Kind.DELIVERED)) {
            Fact.Delivered one = (Fact.Delivered) recorded.fact();
            LocalDate day = day(recorded);
            if (!day.isBefore(fromInclusive) && day.isBefore(untilExclusive))
                sale(day, one.customer(), one.product())
                        .ifPresent(each -> sales.add(new Sale(
                                day, one.customer(), one.product(), one.lot().text(), one.packs(), each)));
        }
        return sales;
    }

    private List<Sale> credits(LocalDate fromInclusive, LocalDate untilExclusive) {
        List<Sale> credits = new ArrayList<>();
        for (Recorded recorded : ledger.records().all(Fact.Kind.RETURNED)) {
            Fact.Returned one = (Fact.Returned) recorded.fact();
            LocalDate day = day(recorded);
            if (one.what() == Fact.Returned.What.GOODS && !day.isBefore(fromInclusive) && day.isBefore(untilExclusive))
                sale(day, one.customer(), one.product())
                        .ifPresent(each ->
                                credits.add(new Sale(day, one.customer(), one.product(), "", -one.count(), each)));
        }
        return credits;
    }

    /** The price of a pack; empty where the shop no longer has the customer or the product. */
    private Optional<Money> sale(LocalDate day, String customer, String product) {
        Optional<Customer> who = shop.findCustomer(customer);
        Optional<Product> what = shop.findProduct(product);
        if (who.isEmpty() || what.isEmpty()) return Optional.empty();
        return Optional.of(prices.of(who.get(), what.get(), day));
    }

    /** Returnable containers out and back in a stretch, by customer and product. */
    List<Sale.Containers> containers(List<Sale> sales, LocalDate fromInclusive, LocalDate untilExclusive) {
        Map<String, Long> back = new TreeMap<>();
        for (Recorded recorded : ledger.records().all(Fact.Kind.RETURNED)) {
            Fact.Returned one = (Fact.Returned) recorded.fact();
            LocalDate day = day(recorded);
            if (one.what() == Fact.Returned.What.CONTAINERS
                    && !day.isBefore(fromInclusive)
                    && day.isBefore(untilExclusive))
                back.merge(one.customer() + " " + one.product(), (long) one.count(), Long::sum);
        }
        Map<String, Long> out = new TreeMap<>();
        for (Sale sale : sales)
            if (!sale.isCredit() && deposit(sale.product()).minor() > 0)
                out.merge(sale.customer() + " " + sale.product(), sale.packs(), Long::sum);
        back.keySet().forEach(key -> out.putIfAbsent(key, 0L));
        List<Sale.Containers> containers = new ArrayList<>();
        out.forEach((key, packs) -> {
            String[] codes = key.split(" ");
            containers.add(
                    new Sale.Containers(codes[0], codes[1], packs, back.getOrDefault(key, 0L), deposit(codes[1])));
        });
        return containers.stream()
                .filter(one -> one.out() > 0 || one.back() > 0)
                .toList();
    }

    private Money deposit(String product) {
        return shop.findProduct(product)
                .map(found -> found.packing().deposit())
                .orElse(Money.zero(shop.house().currency()));
    }

    private LocalDate day(Recorded recorded) {
        return recorded.happenedAt().atZone(shop.house().zone()).toLocalDate();
    }
}
