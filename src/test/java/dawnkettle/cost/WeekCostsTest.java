package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.MadeDay.Used;
import dawnkettle.cost.Moves.Cause;
import dawnkettle.mail.Millrace;
import dawnkettle.mail.MillraceFriday;
import dawnkettle.mail.MillraceHalfYear;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class WeekCostsTest {
    private static final Shop SHOP = Millrace.shop();

    private static MadeDay friday(Map<String, UnitPrice> lots) {
        return MadeDay.of(MillraceFriday.well(), SHOP, lots);
    }

    private static Money usd(String amount) {
        return Money.of(new BigDecimal(amount), Millrace.USD);
    }

    @Test
    void beans_of_a_batch_go_to_its_packs_by_mass_and_through_what_is_made_from_it() {
        MadeDay day = friday(Map.of());
        assertThat(day.made()).extracting(Made::product).containsExactly("FIRM-12", "FIRM-BK", "MILK-1", "POUCH-10");
        // 30 kg over 42 kg of blocks and 35 kg of buckets, and 30 kg more for blocks alone.
        assertThat(day.made())
                .extracting(Made::beans)
                .containsExactly(
                        Mass.milligrams(46_363_636),
                        Mass.milligrams(13_636_364),
                        Mass.kilograms(24),
                        Mass.kilograms(20));
        assertThat(day.made()).extracting(Made::packs).containsExactly(340L, 7L, 174L, 110L);
        assertThat(day.water()).isEqualTo(Mass.kilograms(1_040));
        assertThat(day.routes()).isEqualTo(3);
    }

    @Test
    void pouches_carry_the_work_and_the_coagulant_of_the_thin_firm_they_are_made_of() {
        Made pouches = friday(Map.of()).made().get(3);
        // 92 minutes for the thin firm, 75 for frying and packing.
        assertThat(pouches.handSeconds()).isEqualTo((92 + 75) * 60);
        // 0.420 kg of coagulant; 22.32 kg x 0.115 = 2.5668 kg of oil / 0.92 kg a litre = 2.79 l.
        assertThat(pouches.used())
                .containsExactly(
                        new Used("NIGARI", new BigDecimal("0.420000")), new Used("OIL", new BigDecimal("2.790000")));
    }

    /** Every part worked by hand from the fixture's own figures. */
    @Test
    void a_day_costs_what_a_pencil_says() {
        ProductCost all =
                WeekCosts.byWeek(List.of(friday(Map.of())), SHOP).get(0).all();
        assertThat(all.part(CostPart.BEANS)).isEqualTo(usd("160.16")); // 104 kg x 38.50 / 25 kg
        assertThat(all.part(CostPart.ADDITIONS)).isEqualTo(usd("9.03")); // 1.68 kg x 2.30 + 2.79 l x 1.85
        assertThat(all.part(CostPart.PACKAGING)).isEqualTo(usd("0.00"));
        // 104 kg x 9.15 x 3.851 kJ/(kg K) x 89 K = 326.2 MJ; fried 46.5 kg: 26.747 kg of steam x 2.257 + 46.5 x 3.61 x
        // 95 K
        // = 76.3 MJ; 402.5 MJ / 3.6 / 0.5 kWh x 0.11
        assertThat(all.part(CostPart.ENERGY)).isEqualTo(usd("24.60"));
        assertThat(all.part(CostPart.WATER)).isEqualTo(usd("4.37")); // 1.04 m3 x 4.20
        assertThat(all.part(CostPart.LABOUR)).isEqualTo(usd("158.74")); // 443 min x 21.50 / 60
        assertThat(all.part(CostPart.DELIVERY)).isEqualTo(usd("174.00")); // 3 x 58
        assertThat(all.part(CostPart.OVERHEAD)).isEqualTo(usd("310.00"));
        assertThat(all.part(CostPart.OKARA)).isEqualTo(usd("-5.71")); // 142.68 kg x 0.04
        assertThat(all.total()).isEqualTo(usd("835.19"));
        assertThat(all.perKilogram()).isEqualTo("2.351"); // / 355.22 kg
        assertThat(all.yield()).isEqualTo("3.42"); // 355.22 / 104
    }

    /** 3.65 MJ a kilogram: heating 100 kg of slurry from 15 to 100 °C takes 33.2 MJ (Siebel's heat capacity, derived). */
    @Test
    void the_heat_of_a_kilogram_of_beans_is_that_of_its_slurry() {
        assertThat(DayCosts.MEGAJOULES_A_KILOGRAM_OF_BEANS.doubleValue()).isCloseTo(33.2 * 11 / 100, within(0.02));
    }

    @Test
    void beans_cost_what_their_lot_cost_where_that_is_known() {
        UnitPrice dear = new UnitPrice(usd("53.90"), Mass.kilograms(25));
        ProductCost all = WeekCosts.byWeek(List.of(friday(Map.of("QS-2211", dear))), SHOP)
                .get(0)
                .all();
        // 60 kg x 1.54 + 44 kg x 2.156
        assertThat(all.part(CostPart.BEANS)).isEqualTo(usd("187.26"));
    }

    @Test
    void soaked_beans_that_no_batch_takes_are_paid_for_by_what_is_made() {
        DayPlan plan = MillraceFriday.withLeftOver(Mass.kilograms(6));
        ProductCost all = WeekCosts.byWeek(List.of(MadeDay.of(plan, SHOP, Map.of())), SHOP)
                .get(0)
                .all();
        assertThat(all.beans()).isEqualTo(Mass.kilograms(110));
        assertThat(all.part(CostPart.BEANS)).isEqualTo(usd("169.40")); // 110 kg x 1.54
    }

    @Test
    void a_pack_a_case_and_a_kilogram_have_their_price() {
        ProductCost bucket = WeekCosts.byWeek(List.of(friday(Map.of())), SHOP)
                .get(0)
                .products()
                .get(1);
        assertThat(bucket.product()).isEqualTo("FIRM-BK");
        assertThat(bucket.part(CostPart.BEANS)).isEqualTo(usd("21.00")); // 13.636364 kg x 1.54
        assertThat(bucket.perPacks(1).minor()).isCloseTo(bucket.total().minor() / 7, within(1L));
        assertThat(bucket.perPacks(7)).isEqualTo(bucket.total());
    }

    @Test
    void weeks_begin_on_monday_and_stand_in_their_order() {
        List<WeekCosts> weeks = WeekCosts.byWeek(MillraceHalfYear.days(), SHOP);
        assertThat(weeks).hasSize(26).allMatch(week -> week.days() == 6 && week.routes() == 30);
        assertThat(weeks.get(0).monday()).isEqualTo("2026-06-01");
        assertThat(weeks.get(25).monday()).isEqualTo("2026-11-23");
    }

    @Property(tries = 200)
    void parts_of_products_add_up_to_the_week_to_the_cent(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 1, max = 3_000) Integer> packs) {
        List<MadeDay> days = new ArrayList<>();
        for (int i = 0; i < packs.size(); i++) {
            Mass mass = Mass.grams(350L * packs.get(i));
            Made first = new Made(
                    "FIRM-12", packs.get(i), mass, Mass.grams(133L * packs.get(i)), 41L * packs.get(i), List.of());
            Made second = new Made(
                    "MILK-1",
                    7,
                    Mass.grams(7_210),
                    Mass.grams(973),
                    333,
                    List.of(new Used("NIGARI", new BigDecimal("0.0377"))));
            days.add(new MadeDay(
                    LocalDate.of(2026, 12, 1).plusDays(i),
                    List.of(first, second),
                    new UnitPrice(usd("38.47"), Mass.grams(24_999)),
                    Mass.grams(777_777),
                    3));
        }
        for (WeekCosts week : WeekCosts.byWeek(days, SHOP)) {
            for (CostPart part : CostPart.values())
                assertThat(week.products().stream()
                                .map(p -> p.part(part))
                                .reduce(Money::plus)
                                .orElseThrow())
                        .isEqualTo(week.all().part(part));
            assertThat(week.products().stream()
                            .map(ProductCost::total)
                            .reduce(Money::plus)
                            .orElseThrow())
                    .isEqualTo(week.all().total());
            // The rent of a day is what is written down, however it is shared out.
            assertThat(week.all().part(CostPart.OVERHEAD))
                    .isEqualTo(usd("310.00").times(week.days()));
        }
    }

    @Test
    void what_moved_a_week_adds_up_to_the_whole_move() {
        List<WeekCosts> weeks = WeekCosts.byWeek(MillraceHalfYear.days(), SHOP);
        for (int i = 1; i < weeks.size(); i++)
            assertThat(Moves.between(weeks.get(i - 1), weeks.get(i)).whole())
                    .isEqualTo(weeks.get(i)
                            .all()
                            .total()
                            .minus(weeks.get(i - 1).all().total()));
    }

    /** 1.925 a sack of 25 kg is 0.077 a kg, in each of eight weeks: 40 % of 38.50 in all. */
    @Test
    void dearer_beans_are_named_with_their_size_and_week() {
        List<WeekCosts> weeks = WeekCosts.byWeek(MillraceHalfYear.days(), SHOP);
        List<Integer> moved = IntStream.range(1, 26)
                .filter(i -> Moves.between(weeks.get(i - 1), weeks.get(i))
                                .parts()
                                .get(Cause.BEAN_PRICE)
                                .minor()
                        > 100)
                .boxed()
                .toList();
        assertThat(moved).containsExactly(15, 16, 17, 18, 19, 20, 21, 22);
        double beans = weeks.get(15)
                .all()
                .beans()
                .inKilograms(3, java.math.RoundingMode.HALF_UP)
                .doubleValue();
        Money price = Moves.between(weeks.get(14), weeks.get(15)).parts().get(Cause.BEAN_PRICE);
        assertThat(price.amount().doubleValue()).isCloseTo(beans * 0.077, within(beans * 0.077 * 0.05));
    }

    /** From 2.600 to 2.496 kg a kg in week 20: firm takes 1 / 2.496 - 1 / 2.600 kg of beans more for each kilogram. */
    @Test
    void a_worse_yield_is_named_with_its_size_and_week() {
        List<WeekCosts> weeks = WeekCosts.byWeek(MillraceHalfYear.days(), SHOP);
        List<Integer> moved = IntStream.range(1, 26)
                .filter(i -> Moves.between(weeks.get(i - 1), weeks.get(i))
                                .parts()
                                .get(Cause.BEAN_USE)
                                .minor()
                        > 100)
                .boxed()
                .toList();
        assertThat(moved).containsExactly(20);
        ProductCost firm = weeks.get(20).products().get(0);
        double kilograms =
                firm.mass().inKilograms(3, java.math.RoundingMode.HALF_UP).doubleValue();
        double price = weeks.get(19).all().beanPrice().doubleValue();
        double expected = kilograms * (1 / 2.496 - 1 / 2.6) * price;
        Money use = Moves.between(weeks.get(19), weeks.get(20)).parts().get(Cause.BEAN_USE);
        assertThat(use.amount().doubleValue()).isCloseTo(expected, within(expected * 0.05));
    }

    @Test
    void a_product_that_comes_or_goes_is_a_move_of_the_mix() {
        List<WeekCosts> weeks = WeekCosts.byWeek(MillraceHalfYear.days(), SHOP);
        WeekCosts firmAlone = only(weeks.get(0), 0);
        Moves moves = Moves.between(firmAlone, weeks.get(0));
        assertThat(moves.whole()).isEqualTo(weeks.get(0).products().get(1).total());
        assertThat(moves.parts().get(Cause.VOLUME).plus(moves.parts().get(Cause.MIX)))
                .isEqualTo(moves.whole());
        Moves back = Moves.between(weeks.get(0), firmAlone);
        assertThat(back.whole().minor()).isEqualTo(-moves.whole().minor());
    }

    private static WeekCosts only(WeekCosts week, int product) {
        ProductCost one = week.products().get(product);
        return new WeekCosts(week.monday().minusWeeks(1), week.days(), week.routes(), List.of(one), one);
    }
}
