package dawnkettle.mail;

import dawnkettle.cost.ProductCost;
import dawnkettle.cost.WeekCosts;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.util.List;

/** The chart of the weekly report: the price of beans and the cost of a kilogram, over the weeks. */
final class CostChart {
    private static final int WEEKS = 26;

    private CostChart() {}

    static Chart of(List<WeekCosts> all, Shop shop) {
        List<WeekCosts> weeks = all.subList(Math.max(0, all.size() - WEEKS), all.size());
        String unit = shop.house().currency().getCurrencyCode() + " per kg";
        List<BigDecimal> costs =
                weeks.stream().map(WeekCosts::all).map(ProductCost::perKilogram).toList();
        List<BigDecimal> beans =
                weeks.stream().map(WeekCosts::all).map(ProductCost::beanPrice).toList();
        return new Chart(
                "cost-per-kg",
                "Cost of a kilogram made, and price of a kilogram of beans",
                unit,
                weeks.stream().map(WeekCosts::monday).toList(),
                List.of(new Chart.Line("cost of a kilogram made", costs), new Chart.Line("price of beans", beans)),
                told("Cost of a kilogram made", costs, weeks, unit) + " " + told("Price of beans", beans, weeks, unit));
    }

    private static String told(String what, List<BigDecimal> values, List<WeekCosts> weeks, String unit) {
        int last = values.size() - 1;
        return what + ": " + values.get(0) + " " + unit + " in the week of "
                + Figures.date(weeks.get(0).monday()) + ", "
                + values.get(last) + " in the week of "
                + Figures.date(weeks.get(last).monday()) + "; least "
                + values.stream().min(BigDecimal::compareTo).orElseThrow() + ", most "
                + values.stream().max(BigDecimal::compareTo).orElseThrow() + ".";
    }
}
