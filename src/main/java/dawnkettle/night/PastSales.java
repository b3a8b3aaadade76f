package dawnkettle.night;

import dawnkettle.cost.PriceBook;
import dawnkettle.cost.Sale;
import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.ContainerBalance;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Recorded;
import dawnkettle.stock.Web.Handed;
import dawnkettle.store.Ledger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What went to customers, at what price, and what came back: as written down, and lines without a word as planned. */
final class PastSales {
    private final Ledger ledger;
    private final Shop shop;
    private final PriceBook prices;
    private final List<Handed> handed;

    PastSales(Office office) {
        this.ledger = office.ledger();
        this.shop = office.shop();
        this.handed = ledger.trace().web(shop, office.now()).handed();
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

    /** Deliveries and credits of a stretch, by day: the same packs that a trace finds with customers. */
    List<Sale> sales(LocalDate fromInclusive, LocalDate untilExclusive) {
        List<Sale> sales = new ArrayList<>();
        delivered(fromInclusive, untilExclusive)
                .forEach((goods, packs) -> each(goods.day(), goods.customer(), goods.product())
                        .ifPresent(each -> sales.add(
                                new Sale(goods.day(), goods.customer(), goods.product(), goods.lot(), packs, each))));
        sales.addAll(credits(fromInclusive, untilExclusive));
        sales.sort(Comparator.comparing(Sale::date)
                .thenComparing(Sale::customer)
                .thenComparing(Sale::product)
                .thenComparing(Sale::lot));
        return sales;
    }

    /** What a customer got of a lot on a day, of all lines together. */
    private record Goods(LocalDate day, String customer, String product, String lot) {}

    private Map<Goods, Long> delivered(LocalDate fromInclusive, LocalDate untilExclusive) {
        Map<Goods, Long> packs = new LinkedHashMap<>();
        for (Handed one : handed)
            if (one.gone() && isWithin(one.day(), fromInclusive, untilExclusive))
                packs.merge(
                        new Goods(
                                one.day(),
                                one.customer(),
                                one.product(),
                                one.lot().text()),
                        (long) one.packs(),
                        Long::sum);
        return packs;
    }

    private static boolean isWithin(LocalDate day, LocalDate fromInclusive, LocalDate untilExclusive) {
        return !day.isBefore(fromInclusive) && day.isBefore(untilExclusive);
    }

    /** For goods that came back, and for those that never got there. */
    private List<Sale> credits(LocalDate fromInclusive, LocalDate untilExclusive) {
        List<Sale> credits = new ArrayList<>();
        for (Recorded recorded : ledger.records().all(Fact.Kind.RETURNED)) {
            Fact.Returned one = (Fact.Returned) recorded.fact();
            LocalDate day = day(recorded);
            if (one.what() == Fact.Returned.What.CONTAINERS || !isWithin(day, fromInclusive, untilExclusive)) continue;
            String lot = one.lot().map(LotCode::text).orElse("");
            String why = (one.what() == Fact.Returned.What.SHORT ? "short: " : "returned: ") + one.why();
            each(day, one.customer(), one.product())
                    .ifPresent(each ->
                            credits.add(new Sale(day, one.customer(), one.product(), lot, -one.count(), each, why)));
        }
        return credits;
    }

    /** The price of a pack; empty where the shop no longer has the customer or the product. */
    private Optional<Money> each(LocalDate day, String customer, String product) {
        Optional<Customer> who = shop.findCustomer(customer);
        Optional<Product> what = shop.findProduct(product);
        if (who.isEmpty() || what.isEmpty()) return Optional.empty();
        return Optional.of(prices.of(who.get(), what.get(), day));
    }

    /** Returnable containers at customers when a stretch has ended, by the same book that {@code stock} tells. */
    List<Sale.Containers> containers(LocalDate untilExclusive) {
        List<Handed> before = handed.stream()
                .filter(one -> one.day().isBefore(untilExclusive))
                .toList();
        List<Recorded> records = ledger.records().all(Fact.Kind.RETURNED, Fact.Kind.CONTAINERS).stream()
                .filter(one -> day(one).isBefore(untilExclusive))
                .toList();
        return ContainerBalance.of(shop, before, records).stream()
                .map(one -> new Sale.Containers(
                        one.customer(), one.product(), one.out(), one.back(), one.difference(), deposit(one.product())))
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
