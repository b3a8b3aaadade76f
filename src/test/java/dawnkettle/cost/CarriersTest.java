package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.cost.HoldMargin.Change;
import dawnkettle.cost.HoldMargin.Held;
import dawnkettle.cost.HoldMargin.Proposed;
import dawnkettle.mail.Millrace;
import dawnkettle.mail.MillraceHalfYear;
import dawnkettle.measure.Money;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class CarriersTest {
    private static final Shop SHOP = Millrace.shop();
    private static final List<MadeDay> DAYS = MillraceHalfYear.days().subList(0, 6);
    private static final WeekCosts WEEK = WeekCosts.byWeek(DAYS, SHOP).get(0);
    private static final LocalDate MONDAY = WEEK.monday();
    private static final BigDecimal SAME = BigDecimal.ONE;

    private static Money usd(String amount) {
        return Money.of(new BigDecimal(amount), Millrace.USD);
    }

    private static Sale sale(int day, String customer, String product, long packs) {
        return new Sale(
                MONDAY.plusDays(day),
                customer,
                product,
                "260601-FI01",
                packs,
                SHOP.product(product).price());
    }

    @Property(tries = 100)
    void what_was_delivered_and_what_stayed_add_up_to_the_week_to_the_cent(
            @ForAll @Size(min = 1, max = 40) List<@IntRange(min = 1, max = 300) Integer> packs) {
        List<Sale> sales = new ArrayList<>();
        String[] customers = {"HERON", "SOUP", "NOODLE"};
        for (int i = 0; i < packs.size(); i++)
            sales.add(sale(i % 6, customers[i % 3], i % 2 == 0 ? "FIRM-12" : "MILK-1", packs.get(i)));
        sales.add(sale(2, "SOUP", "FIRM-12", -3));
        Carriers carriers = new Carriers(WEEK, sales, SHOP);
        assertThat(carriers.all().goods().plus(carriers.all().vans()).plus(carriers.stayed()))
                .isEqualTo(WEEK.all().total());
        assertThat(carriers.all().vans()).isEqualTo(WEEK.all().part(CostPart.DELIVERY));
        for (List<Carrier> by : List.of(carriers.customers(), carriers.products(), carriers.routes())) {
            assertThat(by.stream().map(Carrier::left).reduce(Money::plus).orElseThrow())
                    .isEqualTo(carriers.all().left());
            assertThat(by.stream().map(Carrier::sales).reduce(Money::plus).orElseThrow())
                    .isEqualTo(
                            sales.stream().map(Sale::amount).reduce(Money::plus).orElseThrow());
        }
    }

    /** Two rounds carry one pack each, a third goes twice: its two packs bear two vans of four. */
    @Test
    void a_round_bears_its_vans_whatever_it_carries() {
        Carriers carriers = new Carriers(
                WEEK,
                List.of(
                        sale(0, "HERON", "FIRM-12", 1),
                        sale(0, "SOUP", "FIRM-12", 500),
                        sale(0, "NOODLE", "FIRM-12", 1),
                        sale(1, "NOODLE", "FIRM-12", 1)),
                SHOP);
        Money vans = WEEK.all().part(CostPart.DELIVERY);
        assertThat(carriers.routes())
                .filteredOn(one -> one.code().equals("HIL"))
                .singleElement()
                .satisfies(one -> assertThat(one.vans().minor()).isEqualTo(vans.minor() / 2));
    }

    @Test
    void a_customer_who_takes_one_pack_a_van_costs_more_than_it_brings() {
        Carriers carriers =
                new Carriers(WEEK, List.of(sale(0, "HERON", "FIRM-12", 1), sale(0, "SOUP", "FIRM-12", 900)), SHOP);
        assertThat(carriers.customers().get(1).code()).isEqualTo("HERON");
        assertThat(carriers.customers().get(1).left().isNegative()).isTrue();
    }

    @Test
    void a_price_is_that_of_the_list_and_the_day() {
        LocalDate later = MONDAY.plusDays(3);
        PriceBook book = new PriceBook(
                SHOP,
                List.of(
                        new ListPrice("kitchen", "FIRM-12", usd("1.80"), MONDAY),
                        new ListPrice("kitchen", "FIRM-12", usd("1.85"), later),
                        new ListPrice("everyday", "FIRM-12", usd("2.05"), later)));
        var firm = SHOP.product("FIRM-12");
        assertThat(book.of("kitchen", firm, MONDAY.minusDays(1))).isEqualTo(firm.price());
        assertThat(book.of("kitchen", firm, MONDAY)).isEqualTo(usd("1.80"));
        assertThat(book.of("kitchen", firm, later)).isEqualTo(usd("1.85"));
        assertThat(book.of("everyday", firm, later)).isEqualTo(usd("2.05"));
        assertThat(book.of("school", firm, later)).isEqualTo(usd("2.05"));
        assertThat(book.lists()).containsExactly("everyday", "kitchen");
    }

    private static Proposed firm(Change change, Held held) {
        HoldMargin hold = new HoldMargin(WEEK, DAYS, new PriceBook(SHOP, List.of()));
        return hold.prices(change, held, MONDAY).get(0);
    }

    /** A pack of 350 g takes 0.350 / 2.600 kg of beans at 1.54: 0.2073; 40 % of it is 0.0829, and 1.95 (its price) rises to the next 0.05. */
    @Test
    void beans_that_rise_raise_a_price_by_their_share_and_up_to_the_step() {
        Proposed held = firm(new Change(new BigDecimal("1.4"), SAME, SAME), Held.MONEY);
        assertThat(held.more().doubleValue())
                .isCloseTo(0.4 * 154 * 0.350 / 2.6, org.assertj.core.api.Assertions.within(0.02));
        long exact = held.old().minor()
                + held.more().setScale(0, java.math.RoundingMode.CEILING).longValueExact();
        assertThat(held.now().minor()).isBetween(exact, exact + 4);
        assertThat(held.now().minor() % 5).isZero();
    }

    @Test
    void to_hold_the_percent_takes_more_than_to_hold_the_money() {
        Change dearer = new Change(new BigDecimal("3"), SAME, SAME);
        assertThat(firm(dearer, Held.PERCENT).now())
                .isGreaterThan(firm(dearer, Held.MONEY).now());
    }

    @Test
    void a_price_that_need_not_rise_stays_and_none_falls() {
        assertThat(firm(new Change(SAME, SAME, SAME), Held.MONEY).now())
                .isEqualTo(SHOP.product("FIRM-12").price());
        assertThat(firm(new Change(new BigDecimal("0.5"), SAME, SAME), Held.PERCENT)
                        .now())
                .isEqualTo(SHOP.product("FIRM-12").price());
    }

    @Test
    void a_customer_pays_more_by_what_it_takes_in_a_week() {
        HoldMargin hold = new HoldMargin(WEEK, DAYS, new PriceBook(SHOP, List.of()));
        List<Proposed> proposed = hold.prices(new Change(new BigDecimal("1.4"), SAME, SAME), Held.MONEY, MONDAY);
        Money more = proposed.get(0).now().minus(proposed.get(0).old());
        assertThat(hold.customers(proposed, List.of(sale(0, "SOUP", "FIRM-12", 24), sale(3, "SOUP", "FIRM-12", 12))))
                .singleElement()
                .satisfies(one -> assertThat(one.more()).isEqualTo(more.times(36)));
    }
}
