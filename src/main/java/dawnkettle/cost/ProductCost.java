package dawnkettle.cost;

import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * What a product, or everything together, cost in a week.
 *
 * @param product its code; empty for everything together
 * @param beans dry beans that went into it
 * @param handSeconds seconds of work that one person would take
 * @param parts every part, to the cent; what okara brought in stands below zero
 */
public record ProductCost(
        String product, long packs, Mass mass, Mass beans, long handSeconds, Map<CostPart, Money> parts) {
    /** Digits beyond the cent in which a price a kilogram is told: its moves are smaller than a cent. */
    private static final int FINER = 1;

    private static final BigDecimal MILLIGRAMS_A_KILOGRAM = BigDecimal.valueOf(1_000_000);

    public ProductCost {
        parts = Collections.unmodifiableMap(new EnumMap<>(parts));
        if (parts.size() != CostPart.values().length) throw new IllegalArgumentException("every part has its amount");
    }

    public Money part(CostPart part) {
        return parts.get(part);
    }

    public Money total() {
        return parts.values().stream().reduce(Money::plus).orElseThrow();
    }

    /** In whole currency, to a tenth of a cent; zero where nothing was made. */
    public BigDecimal perKilogram() {
        return perKilogram(total(), mass);
    }

    /** So much of a cost to each kilogram made. */
    public BigDecimal perKilogram(Money amount) {
        return perKilogram(amount, mass);
    }

    /** What a kilogram of dry beans cost. */
    public BigDecimal beanPrice() {
        return perKilogram(part(CostPart.BEANS), beans);
    }

    /** Product from a kilogram of dry beans, in kilograms, to a hundredth. */
    public BigDecimal yield() {
        if (beans.isZero()) return BigDecimal.ZERO;
        return BigDecimal.valueOf(mass.milligrams())
                .divide(BigDecimal.valueOf(beans.milligrams()), 2, RoundingMode.HALF_UP);
    }

    /** What so many packs cost, rounded to the cent. */
    public Money perPacks(int count) {
        if (packs == 0) return Money.zero(total().currency());
        long minor = BigDecimal.valueOf(total().minor())
                .multiply(BigDecimal.valueOf(count))
                .divide(BigDecimal.valueOf(packs), 0, RoundingMode.HALF_UP)
                .longValueExact();
        return Money.minor(minor, total().currency());
    }

    private static BigDecimal perKilogram(Money money, Mass mass) {
        int digits = money.currency().getDefaultFractionDigits() + FINER;
        if (mass.isZero()) return BigDecimal.ZERO.setScale(digits);
        return money.amount()
                .multiply(MILLIGRAMS_A_KILOGRAM)
                .divide(BigDecimal.valueOf(mass.milligrams()), digits, RoundingMode.HALF_UP);
    }
}
