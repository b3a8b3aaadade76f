package dawnkettle.cost;

import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * All that the weekly report is made of.
 *
 * @param weeks the oldest first, at least one; the last is the one reported
 * @param standard what the last week would have cost by what is written down; empty where it is not known
 * @param yields by recipe, what takes most first
 */
public record WeekBook(
        List<WeekCosts> weeks, Optional<WeekCosts> standard, List<YieldCourse> yields, Trade trade, Shop shop) {
    public WeekBook {
        weeks = List.copyOf(weeks);
        yields = List.copyOf(yields);
        if (weeks.isEmpty()) throw new IllegalArgumentException("a report is of at least one week");
    }

    /**
     * What was sold.
     *
     * @param sales of the last week, credits among them
     * @param containers since {@code since}
     * @param days of the last week, as they were made
     */
    public record Trade(
            List<Sale> sales, List<Sale.Containers> containers, LocalDate since, List<MadeDay> days, PriceBook prices) {
        public Trade {
            sales = List.copyOf(sales);
            containers = List.copyOf(containers);
            days = List.copyOf(days);
        }
    }

    /** Weeks of which nothing else is known. */
    public static WeekBook of(List<WeekCosts> weeks, Shop shop) {
        LocalDate since = weeks.get(0).monday();
        Trade nothing = new Trade(List.of(), List.of(), since, List.of(), new PriceBook(shop, List.of()));
        return new WeekBook(weeks, Optional.empty(), List.of(), nothing, shop);
    }

    public WeekCosts now() {
        return weeks.get(weeks.size() - 1);
    }

    public Optional<WeekCosts> before() {
        return weeks.size() > 1 ? Optional.of(weeks.get(weeks.size() - 2)) : Optional.empty();
    }

    public Carriers carriers() {
        return new Carriers(now(), trade.sales(), shop);
    }
}
