package dawnkettle.plan;

import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What usually comes after the close, by product and weekday, from the shop's own history: the quantile at which one pack
 * more costs as much as it brings (the newsvendor's), drawn towards nothing while history is short, and nothing without any.
 */
public final class Allowances {
    /** Weeks of history that count as much as the belief that nothing comes late (the shop's rule, no source). */
    private static final int WEEKS_OF_DOUBT = 8;

    /** Of a pack's price, what its making costs (a guess until the cost report knows better, no source). */
    private static final int COST_PERCENT = 60;

    /** What a pack left over still brings, in percent of its making. */
    private static final int SALVAGE_PERCENT = 30;

    /** Loss of a pack short: its price less its making. */
    private static final int RATIO_SHORT = 100 - COST_PERCENT;

    /** Loss of a pack over: its making less what it still brings. */
    private static final int RATIO_OVER = COST_PERCENT * (100 - SALVAGE_PERCENT) / 100;

    private Allowances() {}

    /** Packs of a product that came after the close of a making day; a day without any counts with 0. */
    public record LateDay(String product, LocalDate productionDate, int packs) {}

    /** Allowances for a making day, for deliveries on that same day. */
    public static List<Evening.Allowance> of(Shop shop, LocalDate productionDate, List<LateDay> history) {
        List<Evening.Allowance> allowances = new ArrayList<>();
        for (Product product : shop.products()) {
            List<Integer> late = history.stream()
                    .filter(day -> day.product().equals(product.code()))
                    .filter(day -> day.productionDate().getDayOfWeek() == productionDate.getDayOfWeek()
                            && day.productionDate().isBefore(productionDate))
                    .map(LateDay::packs)
                    .sorted()
                    .toList();
            int packs = shrunk(quantile(late, RATIO_SHORT, RATIO_SHORT + RATIO_OVER), late.size());
            if (packs > 0) allowances.add(new Evening.Allowance(product.code(), productionDate, packs));
        }
        return allowances;
    }

    /**
     * The smallest value at which the share of values at or below it reaches {@code part / whole}.
     *
     * @param sorted ascending; empty gives 0
     */
    static int quantile(List<Integer> sorted, int part, int whole) {
        for (int i = 0; i < sorted.size(); i++)
            if ((long) (i + 1) * whole >= (long) part * sorted.size()) return sorted.get(i);
        return 0;
    }

    private static int shrunk(int packs, int weeks) {
        return packs * weeks / (weeks + WEEKS_OF_DOUBT);
    }
}
