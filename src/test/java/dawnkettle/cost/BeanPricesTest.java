package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Shop;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BeanPricesTest {
    private static final Shop SHOP = ReadConfiguration.from(DemoDay.CONF).shop();
    private static final Instant AT = Instant.parse("2026-12-03T20:00:00Z");
    private static final Map<String, UnitPrice> PAID = Map.of("OLD", price(100), "NEW", price(200));

    /** So many cents a kilogram. */
    private static UnitPrice price(long cents) {
        return new UnitPrice(Money.minor(cents, SHOP.house().currency()), Mass.kilograms(1));
    }

    private static PlannedSoak tub(List<Mass> lotBeans) {
        return new PlannedSoak(
                "T01",
                "yellow",
                Mass.kilograms(80),
                List.of("OLD", "NEW"),
                Mass.kilograms(200),
                Celsius.degrees(10),
                Celsius.degrees(18),
                "drawn",
                AT,
                AT.plusSeconds(40_000),
                AT.plusSeconds(80_000),
                700,
                Mass.ZERO,
                List.of(),
                Optional.empty(),
                lotBeans);
    }

    private static BigDecimal cents(List<Mass> lotBeans) {
        return new BeanPrices(SHOP, PAID)
                .add(List.of(tub(lotBeans)))
                .minorOf(Map.of("yellow", Mass.kilograms(80)))
                .stripTrailingZeros();
    }

    @Test
    void a_tub_of_two_lots_costs_what_it_holds_of_each() {
        assertThat(cents(List.of(Mass.kilograms(70), Mass.kilograms(10)))).isEqualByComparingTo("9000");
        assertThat(cents(List.of(Mass.kilograms(10), Mass.kilograms(70)))).isEqualByComparingTo("15000");
    }

    @Test
    void where_a_plan_of_old_does_not_say_it_is_half_and_half() {
        assertThat(cents(List.of())).isEqualByComparingTo("12000");
    }
}
