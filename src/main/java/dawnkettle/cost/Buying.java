package dawnkettle.cost;

import dawnkettle.measure.Money;
import java.util.Optional;

/**
 * How the shop likes to buy.
 *
 * @param orderCost what one order costs whatever its size; empty where nobody reckons with it
 * @param holdingPercent what keeping goods for a year costs, in percent of their price
 * @param coverDays days that an order should last where there is no cost of an order
 * @param mostDays days that an order lasts at most: beans grow old
 */
public record Buying(Optional<Money> orderCost, int holdingPercent, int coverDays, int mostDays) {
    /** Two weeks at a time, never more than three months (common practice, no source). */
    public static final Buying USUAL = new Buying(Optional.empty(), 20, 14, 90);
}
