package dawnkettle.history;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.cost.MadeDay;
import dawnkettle.cost.ProductCost;
import dawnkettle.cost.WeekCosts;
import dawnkettle.intake.ReadHistory;
import dawnkettle.measure.Mass;
import dawnkettle.night.PastWeeks;
import dawnkettle.plan.Allowances;
import dawnkettle.plan.Evening;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import dawnkettle.stock.Recorded;
import dawnkettle.stock.StockLot;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The invented weeks in a ledger, and what comes out of it again. */
class RehearsedHistoryTest {
    private static final LocalDate THURSDAY = LocalDate.of(2026, 12, 3);
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final Instant EVENING_BEFORE = Instant.parse("2026-12-03T10:00:00Z");

    @TempDir
    static Path folder;

    private static Shop shop;
    private static List<Recorded> facts;
    private static Ledger ledger;
    private static List<WeekCosts> weeks;

    @BeforeAll
    static void load() {
        shop = ReadConfiguration.from(DemoDay.CONF).shop();
        facts = ReadHistory.from(HistoryFilesTest.FOLDER, shop);
        ledger = Ledger.open(folder.resolve("ledger.db"));
        assertThat(PastWeeks.load(ledger, facts)).isEqualTo(facts.size());
        weeks = WeekCosts.byWeek(new PastWeeks(ledger, shop).madeDays(Span.FIRST, LocalDate.of(2026, 11, 30)), shop);
    }

    @AfterAll
    static void close() {
        ledger.close();
    }

    @Test
    void loading_twice_changes_nothing() {
        assertThat(PastWeeks.load(ledger, ReadHistory.from(HistoryFilesTest.FOLDER, shop)))
                .isZero();
    }

    @Test
    void twenty_six_weeks_of_costs_come_out() {
        assertThat(weeks).hasSize(26);
        assertThat(weeks.get(0).monday()).isEqualTo(Span.FIRST);
        assertThat(weeks.subList(0, 25)).allMatch(week -> week.days() == 6);
        assertThat(weeks.get(25).days()).as("closed on Thursday").isEqualTo(5);
        assertThat(weeks)
                .allMatch(week -> week.products().size() == shop.products().size());
    }

    /** As the demonstration shop's own book: 1.2 to 1.6 t a day over a week; a Tuesday, without sesame, is lighter. */
    @Test
    void the_days_are_as_large_as_the_demonstration_shops() {
        for (WeekCosts week : weeks)
            assertThat(kilograms(week.all().mass()) / week.days())
                    .as("%s", week.monday())
                    .isBetween(1_200.0, 1_600.0);
        for (MadeDay day : new PastWeeks(ledger, shop).madeDays())
            assertThat(Mass.sum(day.made().stream().map(MadeDay.Made::mass).toList()))
                    .as("%s", day.date())
                    .isBetween(Mass.kilograms(900), Mass.kilograms(1_900));
    }

    /** Bought 18 % dearer in four steps from week 17 on; used a week or so later, as the older lot goes first. */
    @Test
    void the_rise_of_the_bean_price_stands_in_the_weeks_figures() {
        double before = mean(weeks.subList(0, 16), RehearsedHistoryTest::beanPrice);
        for (WeekCosts week : weeks.subList(0, 17))
            assertThat(beanPrice(week)).as("%s", week.monday()).isCloseTo(before, within(0.02 * before));
        assertThat(beanPrice(weeks.get(18))).isGreaterThan(1.03 * before);
        double after = mean(weeks.subList(22, 26), RehearsedHistoryTest::beanPrice);
        assertThat(after / before).isCloseTo(1 + Span.DEARER, within(0.05 * Span.DEARER));
    }

    /** 4 % less in five steps from week 22 on; the batches' own spread leaves the weeks' means half a percent of noise. */
    @Test
    void the_drift_of_the_firm_yield_stands_in_the_weeks_figures() {
        double before = mean(weeks.subList(0, 21), week -> gave(week, "FIRM-400"));
        double last = gave(weeks.get(25), "FIRM-400");
        assertThat(last / before - 1).isCloseTo(Span.DRIFT, within(0.008));
        assertThat(mean(weeks.subList(22, 26), week -> gave(week, "FIRM-400")) / before - 1)
                .isCloseTo(Span.DRIFT * 0.7, within(0.008));
        double other = mean(weeks.subList(0, 21), week -> gave(week, "MED-400"));
        assertThat(mean(weeks.subList(22, 26), week -> gave(week, "MED-400")) / other - 1)
                .isCloseTo(0, within(0.008));
    }

    @Test
    void the_order_book_grows_by_eight_percent() {
        double first = mean(weeks.subList(1, 5), week -> kilograms(week.all().mass()) / week.days());
        double last = mean(weeks.subList(21, 25), week -> kilograms(week.all().mass()) / week.days());
        assertThat(last / first - 1).isCloseTo(Span.GROWTH * 20 / 26, within(0.025));
    }

    @Test
    void fridays_allow_for_what_kitchens_and_shops_think_of_late_and_for_little_else() {
        List<Evening.Allowance> allowances = Allowances.of(shop, FRIDAY, new PastWeeks(ledger, shop).lateDays());
        assertThat(allowances).extracting(Evening.Allowance::product).contains("FIRM-BKT", "MED-BKT", "FIRM-400");
        int named = allowances.stream()
                .filter(one -> List.of("FIRM-BKT", "MED-BKT", "FIRM-400").contains(one.product()))
                .mapToInt(Evening.Allowance::packs)
                .sum();
        int all = allowances.stream().mapToInt(Evening.Allowance::packs).sum();
        assertThat((double) named / all).isGreaterThan(0.85);
        assertThat(Allowances.of(shop, FRIDAY.minusDays(2), new PastWeeks(ledger, shop).lateDays()))
                .as("an ordinary Wednesday")
                .hasSizeLessThanOrEqualTo(1)
                .allMatch(one -> one.packs() == 1);
    }

    /** The older lot does not last for another day of 500 kg or so, so that tomorrow takes from both. */
    @Test
    void two_lots_of_yellow_beans_and_all_else_that_a_kettle_takes_are_in_the_house() {
        List<BeanLot> lots = ledger.stock().beans(shop, FRIDAY, EVENING_BEFORE);
        List<BeanLot> yellow =
                lots.stream().filter(lot -> lot.material().equals("BEAN-YEL")).toList();
        assertThat(yellow).hasSize(2);
        assertThat(yellow.get(0).left()).isBetween(Mass.kilograms(100), Mass.kilograms(450));
        assertThat(yellow.get(1).left()).isGreaterThan(Mass.kilograms(3_000));
        assertThat(yellow.get(0).receivedOn()).isBefore(yellow.get(1).receivedOn());
        assertThat(lots).extracting(BeanLot::material).contains("BEAN-MILK", "NIGARI", "GYPSUM", "OIL", "SESAME");
    }

    @Test
    void what_keeps_lies_in_the_cold_room() {
        List<StockLot> stock = ledger.stock().finished(shop, THURSDAY);
        assertThat(stock).extracting(StockLot::product).contains("XFIRM-350", "SES-350");
        assertThat(stock).allMatch(lot -> !lot.expected() && lot.bestBefore().isAfter(THURSDAY));
        assertThat(ledger.stock().finished(shop, FRIDAY)).allMatch(StockLot::expected);
    }

    private static double beanPrice(WeekCosts week) {
        return week.all().part(dawnkettle.cost.CostPart.BEANS).minor()
                / kilograms(week.all().beans());
    }

    private static double gave(WeekCosts week, String product) {
        ProductCost cost = week.products().stream()
                .filter(each -> each.product().equals(product))
                .findFirst()
                .orElseThrow();
        return kilograms(cost.mass()) / kilograms(cost.beans());
    }

    private static double kilograms(Mass mass) {
        return mass.milligrams() / 1e6;
    }

    private static double mean(List<WeekCosts> some, java.util.function.ToDoubleFunction<WeekCosts> figure) {
        return some.stream().mapToDouble(figure).average().orElseThrow();
    }
}
