package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class AllowancesTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);

    /**
     * T24, a textbook exercise (buy 1.50, sell 2.50, refund 0.50; P(15, 16, 17, 18) = .4, .2, .3, .1): cu 1.00, co 1.00,
     * ratio 0.5, so order 16.
     */
    @Test
    void the_newsvendor_orders_sixteen() {
        List<Integer> demand = List.of(15, 15, 15, 15, 16, 16, 17, 17, 17, 18);
        assertThat(Allowances.quantile(demand, 100, 200)).isEqualTo(16);
    }

    @Test
    void without_history_nothing_is_allowed_for() {
        assertThat(Allowances.of(AnyShop.of(3), FRIDAY, List.of())).isEmpty();
    }

    @Test
    void short_history_is_drawn_towards_nothing_and_other_weekdays_do_not_count() {
        Shop shop = AnyShop.of(3);
        Product product = shop.products().get(0);
        List<Allowances.LateDay> history = new ArrayList<>();
        for (int week = 1; week <= 8; week++) {
            history.add(new Allowances.LateDay(product.code(), FRIDAY.minusWeeks(week), 10));
            history.add(new Allowances.LateDay(
                    product.code(), FRIDAY.minusWeeks(week).minusDays(1), 1_000));
        }
        assertThat(Allowances.of(shop, FRIDAY, history))
                .containsExactly(new Evening.Allowance(product.code(), FRIDAY, 5)); // 10 packs x 8 / (8 + 8)
    }
}
