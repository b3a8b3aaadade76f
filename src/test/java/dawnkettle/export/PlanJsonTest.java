package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlanDay;
import dawnkettle.shop.Shop;
import org.junit.jupiter.api.Test;

class PlanJsonTest {
    @Test
    void a_plan_is_read_as_it_was_written() throws Exception {
        for (long seed = 1; seed <= 50; seed++) {
            Shop shop = AnyShop.of(seed);
            DayPlan plan = PlanDay.of(shop, AnyEvening.of(shop, seed, 0));
            String text = PlanJson.write(plan, shop);
            java.nio.file.Files.createDirectories(java.nio.file.Path.of("target/plans"));
            java.nio.file.Files.writeString(java.nio.file.Path.of("target/plans/" + seed + ".json"), text);
            assertThat(PlanJson.read(text, shop)).as("shop %d", seed).isEqualTo(plan);
        }
    }
}
