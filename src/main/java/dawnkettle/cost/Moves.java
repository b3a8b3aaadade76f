package dawnkettle.cost;

import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;

/**
 * Why a week cost another sum than the week before, in parts that add up to the difference. First the volume at the old
 * mix and cost, then the mix at the old costs, then prices at the new use, then use at the old prices.
 *
 * @param parts by cause; above zero where it costs more now
 */
public record Moves(Map<Cause, Money> parts) {
    private static final MathContext EXACT = new MathContext(40, RoundingMode.HALF_EVEN);

    private static final List<Priced> PRICED = List.of(
            new Priced(
                    CostPart.BEANS,
                    Cause.BEAN_PRICE,
                    Cause.BEAN_USE,
                    cost -> cost.beans().milligrams()),
            new Priced(CostPart.LABOUR, Cause.WAGE, Cause.WORK_USE, ProductCost::handSeconds));

    public Moves {
        parts = Collections.unmodifiableMap(new EnumMap<>(parts));
    }

    /** What can move a week's cost. */
    public enum Cause {
        VOLUME,
        MIX,
        BEAN_PRICE,
        BEAN_USE,
        WAGE,
        WORK_USE,
        MATERIALS,
        HEAT,
        VANS,
        RENT,
        OKARA
    }

    public Money whole() {
        return parts.values().stream().reduce(Money::plus).orElseThrow();
    }

    public static Moves between(WeekCosts before, WeekCosts now) {
        Map<Cause, BigDecimal> exact = new EnumMap<>(Cause.class);
        for (Cause cause : Cause.values()) exact.put(cause, BigDecimal.ZERO);
        BigDecimal growth = ratio(
                BigDecimal.valueOf(now.all().mass().milligrams()),
                BigDecimal.valueOf(before.all().mass().milligrams()));
        BigDecimal oldTotal = minor(before.all().total());
        exact.put(Cause.VOLUME, oldTotal.multiply(growth, EXACT).subtract(oldTotal));
        for (ProductCost old : before.products())
            new Step(old, find(now.products(), old.product()), growth).addTo(exact);
        for (ProductCost fresh : now.products())
            if (find(before.products(), fresh.product()).isEmpty())
                exact.merge(Cause.MIX, minor(fresh.total()), BigDecimal::add);
        return new Moves(rounded(exact, now.all().total().minus(before.all().total())));
    }

    private static List<ProductCost> find(List<ProductCost> products, String code) {
        return products.stream()
                .filter(product -> product.product().equals(code))
                .toList();
    }

    /** Rounds running sums, so that the parts still add up to the whole. */
    private static Map<Cause, Money> rounded(Map<Cause, BigDecimal> exact, Money whole) {
        Map<Cause, Money> rounded = new EnumMap<>(Cause.class);
        BigDecimal sum = BigDecimal.ZERO;
        long before = 0;
        for (Cause cause : Cause.values()) {
            sum = sum.add(exact.get(cause));
            long after = sum.setScale(0, RoundingMode.HALF_UP).longValueExact();
            rounded.put(cause, Money.minor(after - before, whole.currency()));
            before = after;
        }
        if (before != whole.minor()) throw new IllegalStateException("parts add up to " + before + ", not " + whole);
        return rounded;
    }

    private static BigDecimal minor(Money money) {
        return BigDecimal.valueOf(money.minor());
    }

    private static BigDecimal ratio(BigDecimal part, BigDecimal whole) {
        return whole.signum() == 0 ? BigDecimal.ZERO : part.divide(whole, EXACT);
    }

    /** A part that is an amount times a price. */
    private record Priced(CostPart part, Cause price, Cause use, ToLongFunction<ProductCost> amount) {
        BigDecimal amountOf(ProductCost cost) {
            return BigDecimal.valueOf(amount.applyAsLong(cost));
        }
    }

    /** One product's way from the old week to the new. */
    private static final class Step {
        private final ProductCost old;
        private final List<ProductCost> now;
        private final BigDecimal growth;

        /** @param now the product's new week; empty where it was not made */
        Step(ProductCost old, List<ProductCost> now, BigDecimal growth) {
            this.old = old;
            this.now = now;
            this.growth = growth;
        }

        void addTo(Map<Cause, BigDecimal> exact) {
            BigDecimal mixed = minor(old.total()).multiply(own().subtract(growth), EXACT);
            exact.merge(Cause.MIX, mixed, BigDecimal::add);
            if (now.isEmpty()) return;
            ProductCost fresh = now.get(0);
            PRICED.forEach(priced -> use(exact, priced));
            for (CostPart part : CostPart.values())
                if (part != CostPart.BEANS && part != CostPart.LABOUR)
                    exact.merge(causeOf(part), change(part, fresh), BigDecimal::add);
        }

        private static Cause causeOf(CostPart part) {
            return switch (part) {
                case ADDITIONS, PACKAGING -> Cause.MATERIALS;
                case ENERGY, WATER -> Cause.HEAT;
                case DELIVERY -> Cause.VANS;
                case OVERHEAD -> Cause.RENT;
                case OKARA -> Cause.OKARA;
                case BEANS, LABOUR -> throw new IllegalArgumentException(part + " has two causes");
            };
        }

        private void use(Map<Cause, BigDecimal> exact, Priced priced) {
            BigDecimal amount = priced.amountOf(old);
            BigDecimal oldPrice = ratio(minor(old.part(priced.part())), amount);
            BigDecimal more = priced.amountOf(now.get(0))
                    .subtract(amount.multiply(own(), EXACT))
                    .multiply(oldPrice, EXACT);
            exact.merge(priced.use(), more, BigDecimal::add);
            exact.merge(priced.price(), change(priced.part(), now.get(0)).subtract(more), BigDecimal::add);
        }

        /** What a part costs now beyond what it would at the old cost a kilogram. */
        private BigDecimal change(CostPart part, ProductCost fresh) {
            return minor(fresh.part(part)).subtract(minor(old.part(part)).multiply(own(), EXACT));
        }

        /** How much of the product there is now for each kilogram then. */
        private BigDecimal own() {
            if (now.isEmpty()) return BigDecimal.ZERO;
            return ratio(
                    BigDecimal.valueOf(now.get(0).mass().milligrams()),
                    BigDecimal.valueOf(old.mass().milligrams()));
        }
    }
}
