package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Shop;
import org.junit.jupiter.api.Test;

class PlanDayTest {
    @Test
    void a_plan_always_comes_out() {
        for (long seed = 1; seed <= 200; seed++) {
            Shop shop = AnyShop.of(seed);
            DayPlan plan = PlanDay.of(shop, AnyEvening.of(shop, seed, 200));
            assertThat(new PlanRules(shop, plan).broken()).as("shop %d", seed).isEmpty();
        }
    }
}
