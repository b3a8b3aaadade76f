package dawnkettle.cost;

import java.math.BigDecimal;
import java.math.MathContext;

/** The two classical formulas of buying: how much at once, and at what stock. */
public final class OrderQuantity {
    private static final MathContext EXACT = MathContext.DECIMAL64;
    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    /** Standard deviations that cover 95 of 100 lead times: the standard normal quantile (from memory). */
    public static final BigDecimal NINETY_FIVE_PERCENT = new BigDecimal("1.645");

    private OrderQuantity() {}

    /**
     * The lot that makes ordering and keeping together cheapest, {@code sqrt(2 d K / h)} (Harris 1913).
     *
     * @param demand units in a stretch of time
     * @param orderCost of one order, whatever its size
     * @param holdingCost of one unit for the same stretch of time, above 0
     */
    public static BigDecimal economic(BigDecimal demand, BigDecimal orderCost, BigDecimal holdingCost) {
        return TWO.multiply(demand)
                .multiply(orderCost)
                .divide(holdingCost, EXACT)
                .sqrt(EXACT);
    }

    /** What ordering and keeping come to at the economic lot, in the same stretch of time. */
    public static BigDecimal economicCost(BigDecimal demand, BigDecimal orderCost, BigDecimal holdingCost) {
        return TWO.multiply(demand).multiply(orderCost).multiply(holdingCost).sqrt(EXACT);
    }

    /** What is kept against a lead time in which more is used than usual, {@code z sigma sqrt(L)}. */
    public static BigDecimal safety(BigDecimal deviationADay, int leadDays, BigDecimal quantile) {
        return quantile.multiply(deviationADay)
                .multiply(BigDecimal.valueOf(leadDays).sqrt(EXACT));
    }

    /** The stock at which to order: use over the lead time, and the safety stock. */
    public static BigDecimal reorderPoint(BigDecimal useADay, int leadDays, BigDecimal safety) {
        return useADay.multiply(BigDecimal.valueOf(leadDays)).add(safety);
    }
}
