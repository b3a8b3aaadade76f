package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Shop;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

class QuietRevisionTest {
    @Property(tries = 40, seed = "3")
    void a_revision_of_what_has_not_changed_is_the_same_plan_unless_somebody_was_short(
            @ForAll @LongRange(min = 1, max = 10_000) long seed) {
        Shop shop = AnyShop.of(seed);
        Evening evening = AnyEvening.of(shop, seed, 0);
        DayPlan before = PlanDay.of(shop, evening);
        DayPlan after = PlanDay.of(
                shop,
                new Evening(
                        evening.book(),
                        evening.outlook(),
                        evening.larder(),
                        evening.soakRoom(),
                        new Evening.Committed(Optional.of(before), List.of()),
                        evening.now(),
                        evening.budget()));
        for (int i = 0; i < before.orders().size(); i++)
            assertThat(after.orders().get(i).plannedPacks())
                    .isGreaterThanOrEqualTo(before.orders().get(i).plannedPacks());
        if (!before.shortages().isEmpty()) return; // a pack meant for what may still come may then go to who is short
        assertThat(after.orders()).isEqualTo(before.orders());
        assertThat(after.batches()).isEqualTo(before.batches());
        assertThat(after.operations()).isEqualTo(before.operations());
        assertThat(after.soaks()).isEqualTo(before.soaks());
        assertThat(after.allocation()).isEqualTo(before.allocation());
        assertThat(after.labels()).isEqualTo(before.labels());
    }
}
