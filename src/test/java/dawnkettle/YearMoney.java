package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.cost.Carrier;
import dawnkettle.cost.Carriers;
import dawnkettle.cost.CostPart;
import dawnkettle.cost.MadeDay;
import dawnkettle.cost.Moves;
import dawnkettle.cost.ProductCost;
import dawnkettle.cost.Sale;
import dawnkettle.cost.Standard;
import dawnkettle.cost.WeekBook;
import dawnkettle.cost.WeekCosts;
import dawnkettle.measure.Money;
import dawnkettle.night.GatherBook;
import dawnkettle.night.Office;
import dawnkettle.night.PastWeeks;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Money of a simulated year: reckoned once more from the plans and receipts alone, and added up every way it is told. */
final class YearMoney {
    /** Half a cent for the one rounding of a week's part, and what twelve carried decimals may have lost. */
    private static final BigDecimal HALF_A_CENT = new BigDecimal("0.500001");

    private final SimulatedYear year;
    private final Shop shop;
    private final Office office;
    private final LocalDate after;
    private final Map<String, BigDecimal> beanPrices = new HashMap<>();

    YearMoney(SimulatedYear year, LocalDate after) {
        this.year = year;
        this.shop = year.shop;
        this.office = year.office(year.ledger());
        this.after = after;
    }

    void check() {
        receipts();
        List<MadeDay> days = new PastWeeks(year.ledger(), shop, office.edges().plans()).madeDays();
        assertThat(days).hasSameSizeAs(year.plans);
        List<WeekCosts> weeks = WeekCosts.byWeek(days, shop);
        assertThat(weeks.stream().mapToInt(WeekCosts::days).sum()).isEqualTo(days.size());
        for (WeekCosts week : weeks) {
            List<MadeDay> ofWeek = days.stream()
                    .filter(day -> monday(day.date()).equals(week.monday()))
                    .toList();
            parts(week);
            products(week);
            carriers(week, new Carriers(week, sales(week.monday()), shop));
            assertThat(Moves.between(new Standard(shop).week(ofWeek), week).whole())
                    .isEqualTo(week.all()
                            .total()
                            .minus(new Standard(shop).week(ofWeek).all().total()));
        }
        for (int i = 1; i < weeks.size(); i++)
            assertThat(Moves.between(weeks.get(i - 1), weeks.get(i)).whole())
                    .isEqualTo(weeks.get(i)
                            .all()
                            .total()
                            .minus(weeks.get(i - 1).all().total()));
        report();
    }

    private static LocalDate monday(LocalDate day) {
        return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    }

    private void receipts() {
        year.ledger().records().all(Fact.Kind.RECEIVED).forEach(recorded -> {
            Fact.Received in = (Fact.Received) recorded.fact();
            beanPrices.put(
                    in.lot(),
                    BigDecimal.valueOf(in.paid().minor())
                            .divide(BigDecimal.valueOf(in.quantity().smallest()), MathContext.DECIMAL128));
        });
    }

    /** Beans at what was paid, hands by the minute, vans, water and rent: from the plans, without the costs' own classes. */
    private void parts(WeekCosts week) {
        BigDecimal beans = BigDecimal.ZERO;
        BigDecimal seconds = BigDecimal.ZERO;
        BigDecimal water = BigDecimal.ZERO;
        long vans = 0;
        long days = 0;
        for (DayPlan plan : year.plans) {
            if (!monday(plan.heading().productionDate()).equals(week.monday())) continue;
            beans = beans.add(beans(plan));
            seconds = seconds.add(seconds(plan));
            water = water.add(water(plan));
            vans += plan.routes().size();
            days++;
        }
        var rates = shop.costs();
        isRounded(week, CostPart.BEANS, beans);
        isRounded(
                week,
                CostPart.LABOUR,
                minor(rates.hourlyWage()).multiply(seconds).divide(new BigDecimal(3_600), MathContext.DECIMAL128));
        isRounded(week, CostPart.WATER, minor(rates.waterPerCubicMetre()).multiply(water));
        isRounded(week, CostPart.DELIVERY, minor(rates.perRoute()).multiply(BigDecimal.valueOf(vans)));
        isRounded(week, CostPart.OVERHEAD, minor(rates.overheadPerDay()).multiply(BigDecimal.valueOf(days)));
    }

    private static void isRounded(WeekCosts week, CostPart part, BigDecimal exact) {
        assertThat(minor(week.all().part(part)).subtract(exact).abs())
                .as("%s of %s: %s, reckoned %s", part, week.monday(), week.all().part(part), exact)
                .isLessThanOrEqualTo(HALF_A_CENT);
    }

    private static BigDecimal minor(Money money) {
        return BigDecimal.valueOf(money.minor());
    }

    /** A tub of two lots costs what the plan says it holds of each; where it does not say, half and half. */
    private BigDecimal beans(DayPlan plan) {
        BigDecimal sum = BigDecimal.ZERO;
        for (PlannedSoak soak : plan.soaks()) {
            long rest = soak.beans().milligrams();
            int lots = soak.beanLots().size();
            for (int i = 0; i < lots; i++) {
                long some = soak.lotBeans().size() == lots
                        ? soak.lotBeans().get(i).milligrams()
                        : (rest + lots - i - 1) / (lots - i);
                sum = sum.add(beanPrices.get(soak.beanLots().get(i)).multiply(BigDecimal.valueOf(some)));
                rest -= some;
            }
        }
        return sum;
    }

    private static BigDecimal seconds(DayPlan plan) {
        long halves = 0;
        for (PlannedBatch batch : plan.batches())
            for (PlannedOperation step : plan.operationsOf(batch.id()))
                halves += Duration.between(step.start(), step.end()).toSeconds() * step.halfHands();
        return BigDecimal.valueOf(halves).divide(BigDecimal.valueOf(2));
    }

    /** In cubic metres, a tonne each. */
    private static BigDecimal water(DayPlan plan) {
        long milligrams = plan.soaks().stream()
                        .mapToLong(soak -> soak.water().milligrams())
                        .sum()
                + plan.batches().stream()
                        .mapToLong(batch -> batch.water().milligrams())
                        .sum();
        return BigDecimal.valueOf(milligrams, 9);
    }

    private static void products(WeekCosts week) {
        for (CostPart part : CostPart.values())
            assertThat(week.products().stream().map(one -> one.part(part)).reduce(Money::plus))
                    .contains(week.all().part(part));
        assertThat(week.products().stream().map(ProductCost::total).reduce(Money::plus))
                .contains(week.all().total());
    }

    /** What the plans delivered in the week, at the price of the product. */
    private List<Sale> sales(LocalDate monday) {
        List<Sale> sales = new ArrayList<>();
        for (DayPlan plan : year.plans)
            for (Allocation one : plan.allocation())
                if (monday(one.deliveryDate()).equals(monday))
                    sales.add(new Sale(
                            one.deliveryDate(),
                            one.customer(),
                            one.product(),
                            one.lot().text(),
                            one.packs(),
                            shop.product(one.product()).price()));
        return sales;
    }

    private static void carriers(WeekCosts week, Carriers carriers) {
        Carrier all = carriers.all();
        assertThat(all.goods().plus(all.vans()).plus(carriers.stayed()))
                .isEqualTo(week.all().total());
        for (List<Carrier> by : List.of(carriers.customers(), carriers.products(), carriers.routes())) {
            assertThat(by.stream().map(Carrier::goods).reduce(Money::plus)).contains(all.goods());
            assertThat(by.stream().map(Carrier::vans).reduce(Money::plus)).contains(all.vans());
            assertThat(by.stream().map(Carrier::sales).reduce(Money::plus)).contains(all.sales());
        }
    }

    /** As the weekly report gathers it, with prices by list and what came back. */
    private void report() {
        WeekBook book =
                new GatherBook(office).before(monday(after).plusWeeks(1)).orElseThrow();
        carriers(book.now(), book.carriers());
        assertThat(book.trade().sales()).isNotEmpty();
    }
}
