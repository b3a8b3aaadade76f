package dawnkettle.cost;

import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.MadeDay.Used;
import dawnkettle.measure.Money;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Material;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What prices must be to hold the margin if beans, oil or wages change, from what a week cost. It proposes; a price changes
 * where the owner writes it, and nowhere else.
 */
public final class HoldMargin {
    private static final MathContext EXACT = new MathContext(40, RoundingMode.HALF_EVEN);

    private final WeekCosts week;
    private final PriceBook prices;
    private final Shop shop;
    private final Map<String, BigDecimal> oil = new TreeMap<>();

    /** What is held. */
    public enum Held {
        MONEY,
        PERCENT
    }

    /** What changes, each as a factor: 1.4 for 40 % more. */
    public record Change(BigDecimal beans, BigDecimal oil, BigDecimal wages) {
        public Change {
            for (BigDecimal factor : List.of(beans, oil, wages))
                if (factor.signum() <= 0) throw new IllegalArgumentException("a price changes by a factor above zero");
        }
    }

    /**
     * A price that would hold the margin.
     *
     * @param more what a pack would cost more, in minor units and parts of them
     */
    public record Proposed(String list, Product product, Money old, Money now, BigDecimal more) {
        /** As a row of the price list from a day on. */
        public ListPrice from(LocalDate day) {
            return new ListPrice(list, product.code(), now, day);
        }
    }

    /** What a customer would pay more for a week like this one. */
    public record Weekly(String customer, Money before, Money more) {}

    /** @param days those of the week */
    public HoldMargin(WeekCosts week, List<MadeDay> days, PriceBook prices) {
        this.week = week;
        this.prices = prices;
        this.shop = prices.shop();
        for (MadeDay day : days)
            for (Made made : day.made())
                for (Used used : made.used()) {
                    Material material = shop.material(used.material());
                    if (material.kind() == Material.Kind.OIL)
                        oil.merge(
                                made.product(),
                                used.minor().orElseGet(() -> DayCosts.standard(material, used.units())),
                                BigDecimal::add);
                }
    }

    /** Prices list by list, as they stand on {@code day}; a product that a list does not name has its everyday price. */
    public List<Proposed> prices(Change change, Held held, LocalDate day) {
        List<Proposed> proposed = new ArrayList<>();
        for (String list : prices.lists())
            for (ProductCost cost : week.products())
                shop.findProduct(cost.product())
                        .filter(product -> list.equals("everyday") || prices.names(list, product, day))
                        .filter(product -> cost.packs() > 0)
                        .ifPresent(product -> proposed.add(proposed(
                                new Proposed(
                                        list,
                                        product,
                                        prices.of(list, product, day),
                                        Money.zero(shop.house().currency()),
                                        more(cost, change)),
                                cost,
                                held)));
        return proposed;
    }

    /** What a pack would cost more. */
    private BigDecimal more(ProductCost cost, Change change) {
        BigDecimal whole = minor(cost.part(CostPart.BEANS))
                .multiply(change.beans().subtract(BigDecimal.ONE))
                .add(minor(cost.part(CostPart.LABOUR)).multiply(change.wages().subtract(BigDecimal.ONE)))
                .add(oil.getOrDefault(cost.product(), BigDecimal.ZERO)
                        .multiply(change.oil().subtract(BigDecimal.ONE)));
        return whole.divide(BigDecimal.valueOf(cost.packs()), EXACT);
    }

    private Proposed proposed(Proposed open, ProductCost cost, Held held) {
        BigDecimal more = open.more();
        Money old = open.old();
        BigDecimal pack = minor(cost.total()).divide(BigDecimal.valueOf(cost.packs()), EXACT);
        BigDecimal exact = minor(old).add(more);
        if (held == Held.PERCENT && pack.signum() > 0)
            exact = minor(old).multiply(pack.add(more)).divide(pack, EXACT);
        return new Proposed(open.list(), open.product(), old, more.signum() <= 0 ? old : stepped(exact), more);
    }

    /** Up to the next whole step, so that the margin is held and never missed by a cent. */
    private Money stepped(BigDecimal minor) {
        long step = shop.costs().details().priceStep();
        long steps = minor.round(new MathContext(30, RoundingMode.HALF_EVEN))
                .divide(BigDecimal.valueOf(step), 0, RoundingMode.CEILING)
                .longValueExact();
        return Money.minor(steps * step, shop.house().currency());
    }

    /** @param sales of one week */
    public List<Weekly> customers(List<Proposed> proposed, List<Sale> sales) {
        Map<String, Weekly> weekly = new TreeMap<>();
        Money none = Money.zero(shop.house().currency());
        for (Sale sale : sales)
            if (!sale.isCredit() && shop.findCustomer(sale.customer()).isPresent()) {
                Money more = none;
                for (Proposed price : proposed)
                    if (isFor(price, shop.customer(sale.customer()), sale.product(), proposed))
                        more = price.now().minus(price.old()).times(sale.packs());
                weekly.merge(
                        sale.customer(),
                        new Weekly(sale.customer(), sale.amount(), more),
                        (one, other) -> new Weekly(
                                one.customer(),
                                one.before().plus(other.before()),
                                one.more().plus(other.more())));
            }
        return List.copyOf(weekly.values());
    }

    /** Whether it is the price that the customer pays for a product: of the own list, else the everyday one. */
    public static boolean isFor(Proposed price, Customer customer, String product, List<Proposed> all) {
        if (!price.product().code().equals(product)) return false;
        if (price.list().equals(customer.priceList())) return true;
        return price.list().equals("everyday")
                && all.stream()
                        .noneMatch(other -> other.list().equals(customer.priceList())
                                && other.product().code().equals(product));
    }

    private static BigDecimal minor(Money money) {
        return BigDecimal.valueOf(money.minor());
    }
}
