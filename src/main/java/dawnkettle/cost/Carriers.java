package dawnkettle.cost;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Who carries the shop in a week. A delivered pack costs what a pack of its product cost that week; a round costs its van,
 * shared by mass over what it carried. What was delivered and what stayed add up to the week's cost to the cent.
 */
public final class Carriers {
    private final WeekCosts week;
    private final Shop shop;
    private final List<Sale> sales;
    private final List<Carrier> each = new ArrayList<>();

    /** @param sales those of the week; of a product or customer that the shop no longer has, they are left out */
    public Carriers(WeekCosts week, List<Sale> sales, Shop shop) {
        this.week = week;
        this.shop = shop;
        this.sales = sales.stream()
                .filter(sale -> shop.findProduct(sale.product()).isPresent()
                        && shop.findCustomer(sale.customer()).isPresent())
                .toList();
        List<Long> vans = vans();
        List<Long> goods = goods();
        for (int i = 0; i < this.sales.size(); i++)
            each.add(new Carrier("", this.sales.get(i).amount(), money(goods.get(i)), money(vans.get(i))));
    }

    private Money money(long minor) {
        return Money.minor(minor, shop.house().currency());
    }

    private List<Long> vans() {
        Map<String, Long> rounds = sales.stream()
                .filter(sale -> !sale.isCredit())
                .collect(Collectors.groupingBy(
                        this::route,
                        TreeMap::new,
                        Collectors.mapping(Sale::date, Collectors.collectingAndThen(Collectors.toSet(), set ->
                                (long) set.size()))));
        Map<String, BigDecimal> loads = new TreeMap<>();
        for (Sale sale : sales) loads.merge(route(sale), load(sale), BigDecimal::add);
        List<BigDecimal> weights = sales.stream()
                .map(sale -> loads.get(route(sale)).signum() == 0
                        ? BigDecimal.ZERO
                        : load(sale)
                                .multiply(BigDecimal.valueOf(rounds.getOrDefault(route(sale), 0L)))
                                .divide(loads.get(route(sale)), MathContext.DECIMAL64))
                .toList();
        long whole = sales.isEmpty() ? 0 : week.all().part(CostPart.DELIVERY).minor();
        return Split.of(whole, weights);
    }

    private BigDecimal load(Sale sale) {
        if (sale.isCredit()) return BigDecimal.ZERO;
        Mass mass = shop.product(sale.product()).net().times(sale.packs());
        return BigDecimal.valueOf(mass.milligrams());
    }

    private String route(Sale sale) {
        return shop.customer(sale.customer()).route();
    }

    private List<Long> goods() {
        Long[] parts = new Long[sales.size()];
        for (String product : sales.stream().map(Sale::product).distinct().toList()) {
            List<Integer> places = new ArrayList<>();
            for (int i = 0; i < parts.length; i++) if (sales.get(i).product().equals(product)) places.add(i);
            List<BigDecimal> packs = places.stream()
                    .map(i -> BigDecimal.valueOf(Math.max(0, sales.get(i).packs())))
                    .toList();
            long delivered =
                    packs.stream().mapToLong(BigDecimal::longValueExact).sum();
            List<Long> split = Split.of(costOf(product, delivered), packs);
            for (int i = 0; i < split.size(); i++) parts[places.get(i)] = split.get(i);
        }
        return List.of(parts);
    }

    private long costOf(String product, long packs) {
        Optional<ProductCost> cost = week.products().stream()
                .filter(one -> one.product().equals(product) && one.packs() > 0)
                .findFirst();
        if (cost.isEmpty() || packs == 0) return 0;
        return BigDecimal.valueOf(goodsOf(cost.get()).minor())
                .multiply(BigDecimal.valueOf(packs))
                .divide(BigDecimal.valueOf(cost.get().packs()), 0, RoundingMode.HALF_UP)
                .longValueExact();
    }

    private static Money goodsOf(ProductCost cost) {
        return cost.total().minus(cost.part(CostPart.DELIVERY));
    }

    /** The week's cost that no delivery of it carries: what lies in the cold room, went at the door or was lost. */
    public Money stayed() {
        return week.all().total().minus(sum(each).goods()).minus(sum(each).vans());
    }

    private Carrier sum(List<Carrier> some) {
        Money none = money(0);
        return some.stream().reduce(new Carrier("", none, none, none), Carrier::plus);
    }

    /** All of it. */
    public Carrier all() {
        return sum(each);
    }

    /** By customer, what leaves most first. */
    public List<Carrier> customers() {
        return by(Sale::customer);
    }

    public List<Carrier> products() {
        return by(Sale::product);
    }

    public List<Carrier> routes() {
        return by(this::route);
    }

    private List<Carrier> by(Function<Sale, String> code) {
        Map<String, List<Carrier>> grouped = new TreeMap<>();
        for (int i = 0; i < each.size(); i++)
            grouped.computeIfAbsent(code.apply(sales.get(i)), any -> new ArrayList<>())
                    .add(each.get(i));
        return grouped.entrySet().stream()
                .map(group -> sum(group.getValue()).named(group.getKey()))
                .sorted(Comparator.comparing(Carrier::left).reversed())
                .toList();
    }
}
