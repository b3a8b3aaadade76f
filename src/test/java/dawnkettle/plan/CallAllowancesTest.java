package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.measure.Mass;
import dawnkettle.plan.Allowances.LateDay;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CallAllowancesTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final Shop SHOP = new DemoDay(FRIDAY).conf.shop();

    private static List<LateDay> history(int weeks, long seed) {
        Random dice = new Random(seed);
        List<LateDay> history = new ArrayList<>();
        for (int week = 1; week <= weeks; week++)
            for (Product product : SHOP.products())
                history.add(new LateDay(
                        product.code(), FRIDAY.minusWeeks(week), dice.nextInt(3) == 0 ? dice.nextInt(40) : 0));
        return history;
    }

    private static double kilograms(List<Evening.Allowance> allowances) {
        return CallAllowances.beans(SHOP, allowances).values().stream()
                .mapToDouble(mass -> mass.inKilograms(3, RoundingMode.HALF_UP).doubleValue())
                .sum();
    }

    @Test
    void without_history_nothing_is_soaked_on_suspicion() {
        assertThat(CallAllowances.of(SHOP, FRIDAY, List.of())).isEmpty();
    }

    @Test
    void other_weekdays_and_days_to_come_do_not_count() {
        String code = SHOP.products().get(0).code();
        assertThat(CallAllowances.of(
                        SHOP,
                        FRIDAY,
                        List.of(
                                new LateDay(code, FRIDAY.minusDays(1), 50),
                                new LateDay(code, FRIDAY.plusWeeks(1), 50))))
                .isEmpty();
    }

    /** One bean serves many products: what is soaked for all together varies less than the sum of each one's allowance. */
    @Test
    void kilograms_are_settled_together() {
        List<LateDay> history = history(26, 4);
        double together = kilograms(CallAllowances.of(SHOP, FRIDAY, history));
        double most = 0;
        for (int week = 1; week <= 26; week++) {
            LocalDate day = FRIDAY.minusWeeks(week);
            double wanted = kilograms(history.stream()
                    .filter(late -> late.productionDate().equals(day))
                    .map(late -> new Evening.Allowance(late.product(), day, late.packs()))
                    .toList());
            most = Math.max(most, wanted);
        }
        assertThat(together).isBetween(0.1 * most, most * 26 / 34 + 1);
    }

    @Test
    void short_history_is_drawn_towards_nothing() {
        double few = kilograms(CallAllowances.of(SHOP, FRIDAY, history(2, 9)));
        double many = kilograms(CallAllowances.of(SHOP, FRIDAY, history(26, 9)));
        assertThat(few).isLessThan(many / 2);
    }

    @Test
    void beans_of_fried_pouches_are_those_of_the_blocks_they_are_made_of() {
        for (Product product : SHOP.products()) {
            Mass beans =
                    Mass.sum(CallAllowances.beans(SHOP, List.of(new Evening.Allowance(product.code(), FRIDAY, 100)))
                            .values());
            double ratio = 100.0 * product.net().inGrams(RoundingMode.UP) / beans.inGrams(RoundingMode.UP);
            assertThat(ratio).as(product.code()).isBetween(0.8, 8.0);
        }
    }
}
