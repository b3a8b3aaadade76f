package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

class HeldLotRevisionTest {
    @Property(tries = 25, seed = "20261125")
    void a_revision_gives_nobody_anything_of_a_held_lot(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
        Shop shop = AnyShop.of(seed);
        Evening evening = AnyEvening.of(shop, seed, 0);
        DayPlan before = PlanDay.of(shop, evening);
        List<LotCode> given =
                before.allocation().stream().map(Allocation::lot).distinct().toList();
        if (given.isEmpty()) return;
        LotCode held = given.get(new Random(seed).nextInt(given.size()));

        DayPlan after = PlanDay.of(
                shop,
                new Evening(
                        evening.book(),
                        evening.outlook(),
                        new Evening.Larder(
                                evening.larder().stock(), evening.larder().beans(), Set.of(held)),
                        evening.soakRoom(),
                        new Evening.Committed(Optional.of(before), List.of()),
                        evening.now().plusSeconds(3600),
                        evening.budget()));

        assertThat(new PlanRules(shop, after).broken()).isEmpty();
        assertThat(after.allocation()).extracting(Allocation::lot).doesNotContain(held);
    }
}
