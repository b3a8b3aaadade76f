package dawnkettle.cost;

import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The charts of the weekly report: beans and cost over half a year, a yield with its limits, margin by product. */
public final class CostCharts {
    private static final int WEEKS = 26;
    private static final int MOST_BARS = 20;
    private static final int PLACES = 3;

    private CostCharts() {}

    public static Chart beansAndCost(List<WeekCosts> all, Shop shop) {
        List<WeekCosts> weeks = all.subList(Math.max(0, all.size() - WEEKS), all.size());
        String unit = shop.house().currency().getCurrencyCode() + " per kg";
        List<BigDecimal> costs =
                weeks.stream().map(WeekCosts::all).map(ProductCost::perKilogram).toList();
        List<BigDecimal> beans =
                weeks.stream().map(WeekCosts::all).map(ProductCost::beanPrice).toList();
        List<LocalDate> mondays = weeks.stream().map(WeekCosts::monday).toList();
        return new Chart(
                "cost-per-kg",
                "Cost of a kilogram made, and price of a kilogram of beans",
                unit,
                mondays,
                List.of(new Chart.Line("cost of a kilogram made", costs), new Chart.Line("price of beans", beans)),
                told("Cost of a kilogram made", costs, mondays, unit) + " "
                        + told("Price of beans", beans, mondays, unit));
    }

    /** One recipe's yield by week, with what was usual and its limits. */
    public static Chart yield(YieldCourse course) {
        int from = Math.max(0, course.weeks().size() - WEEKS);
        List<LocalDate> weeks = course.weeks().subList(from, course.weeks().size());
        List<BigDecimal> values = course
                .chart()
                .values()
                .subList(from, course.weeks().size())
                .stream()
                .map(CostCharts::rounded)
                .toList();
        ControlChart chart = course.chart();
        List<Chart.Line> lines = List.of(
                new Chart.Line(course.recipe().name(), values),
                level("upper limit " + rounded(chart.upper()), chart.upper(), weeks.size()),
                level("usual " + rounded(chart.centre()), chart.centre(), weeks.size()),
                level("lower limit " + rounded(chart.lower()), chart.lower(), weeks.size()));
        return new Chart(
                "yield-" + course.recipe().code(),
                "Yield of " + course.recipe().name(),
                "kg from a kg",
                weeks,
                lines,
                told("Yield of " + course.recipe().name(), values, weeks, "kg from a kg") + " Usual is "
                        + rounded(chart.centre()) + ", between " + rounded(chart.lower()) + " and "
                        + rounded(chart.upper()) + ".");
    }

    private static Chart.Line level(String name, double value, int weeks) {
        return new Chart.Line(name, Collections.nCopies(weeks, rounded(value)));
    }

    private static BigDecimal rounded(double value) {
        return BigDecimal.valueOf(value).setScale(PLACES, RoundingMode.HALF_UP);
    }

    /** What products left in the week; empty where nothing was delivered. */
    public static Optional<Bars> margins(WeekBook book) {
        List<Carrier> products = book.carriers().products();
        if (products.isEmpty()) return Optional.empty();
        List<Bars.Bar> bars = new ArrayList<>();
        for (Carrier one : products.subList(0, Math.min(MOST_BARS, products.size())))
            bars.add(new Bars.Bar(
                    book.shop().findProduct(one.code()).map(Product::name).orElse(one.code()),
                    one.left().amount().setScale(0, RoundingMode.HALF_UP)));
        String currency = book.shop().house().currency().getCurrencyCode();
        Bars.Bar first = bars.get(0);
        Bars.Bar last = bars.get(bars.size() - 1);
        return Optional.of(new Bars(
                "margin-by-product",
                "What products left in the week",
                currency + " left in the week",
                bars,
                "What " + bars.size() + " products left in the week: most " + first.name() + " with " + first.value()
                        + " " + currency + ", least " + last.name() + " with " + last.value() + "."));
    }

    private static String told(String what, List<BigDecimal> values, List<LocalDate> weeks, String unit) {
        int last = values.size() - 1;
        return what + ": " + values.get(0) + " " + unit + " in the week of " + date(weeks.get(0)) + ", "
                + values.get(last) + " in the week of " + date(weeks.get(last)) + "; least "
                + values.stream().min(BigDecimal::compareTo).orElseThrow() + ", most "
                + values.stream().max(BigDecimal::compareTo).orElseThrow() + ".";
    }

    /** As "4 Dec". */
    private static String date(LocalDate day) {
        String month = day.getMonth().name();
        return day.getDayOfMonth() + " " + month.charAt(0)
                + month.substring(1, 3).toLowerCase(Locale.ROOT);
    }
}
