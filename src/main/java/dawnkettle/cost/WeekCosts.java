package dawnkettle.cost;

import dawnkettle.cost.MadeDay.Made;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a week cost. Sums are rounded once, by part; the products' parts then add up to them to the cent.
 *
 * @param monday first day of the week
 * @param days making days in it
 * @param routes vans that went out
 * @param products in the order of the shop's own list
 * @param all everything together
 */
public record WeekCosts(LocalDate monday, int days, int routes, List<ProductCost> products, ProductCost all) {
    public WeekCosts {
        products = List.copyOf(products);
    }

    /** The weeks of {@code days}, the oldest first. */
    public static List<WeekCosts> byWeek(List<MadeDay> days, Shop shop) {
        Map<LocalDate, List<MadeDay>> weeks = new TreeMap<>();
        for (MadeDay day : days) {
            LocalDate monday = day.date().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
            weeks.computeIfAbsent(monday, week -> new ArrayList<>()).add(day);
        }
        return weeks.entrySet().stream()
                .map(week -> of(week.getKey(), week.getValue(), shop))
                .toList();
    }

    private static WeekCosts of(LocalDate monday, List<MadeDay> days, Shop shop) {
        Map<String, Sum> sums = new TreeMap<>(
                Comparator.comparingInt((String code) -> place(shop, code)).thenComparing(Comparator.naturalOrder()));
        for (MadeDay day : days) {
            DayCosts costs = new DayCosts(day, shop);
            for (Made made : day.made())
                sums.computeIfAbsent(made.product(), product -> new Sum()).add(made, costs.of(made));
        }
        List<ProductCost> products = rounded(sums, shop.house().currency());
        int routes = days.stream().mapToInt(MadeDay::routes).sum();
        return new WeekCosts(
                monday,
                days.size(),
                routes,
                products,
                together(products, shop.house().currency()));
    }

    private static int place(Shop shop, String code) {
        List<String> codes = shop.products().stream().map(Product::code).toList();
        return codes.contains(code) ? codes.indexOf(code) : codes.size();
    }

    private static List<ProductCost> rounded(Map<String, Sum> sums, Currency currency) {
        Map<CostPart, List<Long>> parts = new EnumMap<>(CostPart.class);
        for (CostPart part : CostPart.values()) {
            List<BigDecimal> exact =
                    sums.values().stream().map(sum -> sum.parts.get(part)).toList();
            BigDecimal whole = exact.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
            long minor = whole.setScale(0, RoundingMode.HALF_UP).longValueExact();
            parts.put(part, Split.of(minor, exact.stream().map(BigDecimal::abs).toList()));
        }
        List<ProductCost> products = new ArrayList<>();
        for (Map.Entry<String, Sum> product : sums.entrySet()) {
            int i = products.size();
            Map<CostPart, Money> money = new EnumMap<>(CostPart.class);
            parts.forEach((part, minor) -> money.put(part, Money.minor(minor.get(i), currency)));
            products.add(product.getValue().cost(product.getKey(), money));
        }
        return products;
    }

    private static ProductCost together(List<ProductCost> products, Currency currency) {
        Map<CostPart, Money> parts = new EnumMap<>(CostPart.class);
        for (CostPart part : CostPart.values())
            parts.put(
                    part,
                    products.stream().map(product -> product.part(part)).reduce(Money.zero(currency), Money::plus));
        return new ProductCost(
                "",
                products.stream().mapToLong(ProductCost::packs).sum(),
                Mass.sum(products.stream().map(ProductCost::mass).toList()),
                Mass.sum(products.stream().map(ProductCost::beans).toList()),
                products.stream().mapToLong(ProductCost::handSeconds).sum(),
                parts);
    }

    /** A product's week as it adds up, not rounded. */
    private static final class Sum {
        private final Map<CostPart, BigDecimal> parts = new EnumMap<>(CostPart.class);
        private long packs;
        private Mass mass = Mass.ZERO;
        private Mass beans = Mass.ZERO;
        private long handSeconds;

        void add(Made made, Map<CostPart, BigDecimal> costs) {
            packs += made.packs();
            mass = mass.plus(made.mass());
            beans = beans.plus(made.beans());
            handSeconds += made.handSeconds();
            costs.forEach((part, minor) -> parts.merge(part, minor, BigDecimal::add));
        }

        ProductCost cost(String product, Map<CostPart, Money> money) {
            return new ProductCost(product, packs, mass, beans, handSeconds, money);
        }
    }
}
