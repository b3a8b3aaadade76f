package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.plan.PackOrigins.Origin;
import dawnkettle.plan.PackOrigins.Why;
import dawnkettle.shop.Shop;
import java.util.List;
import org.junit.jupiter.api.Test;

class PackOriginsTest {
    /** Counted against the plan's own rows, in 60 shops that never were. */
    @Test
    void every_pack_can_say_where_it_came_from() {
        for (long seed = 1; seed <= 60; seed++) {
            Shop shop = AnyShop.of(seed);
            DayPlan plan = PlanDay.of(shop, AnyEvening.of(shop, seed, 0));
            List<Origin> origins = PackOrigins.of(plan);
            for (PlannedBatch batch : plan.batches())
                for (PlannedBatch.Filled filled : batch.packs())
                    assertThat(origins.stream()
                                    .filter(one -> one.lot().equals(batch.lot())
                                            && one.product().equals(filled.product())
                                            && !one.fromStock())
                                    .mapToInt(Origin::packs)
                                    .sum())
                            .as("shop %d, %s %s", seed, batch.id(), filled.product())
                            .isEqualTo(filled.packs());
            int planned =
                    plan.orders().stream().mapToInt(PlannedOrder::plannedPacks).sum();
            assertThat(PackOrigins.packs(origins, Why.FIRM) + PackOrigins.packs(origins, Why.STANDING))
                    .isEqualTo(planned);
        }
    }
}
