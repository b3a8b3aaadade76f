package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Shop;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans of shops that never were, kept in a ledger, whose own conservation laws must find nothing. */
class KeptPlansTest {
    @Test
    void the_ledgers_laws_hold_of_random_plans(@TempDir Path folder) {
        for (long seed = 1; seed <= 12; seed++) {
            Shop shop = AnyShop.of(seed);
            Evening evening = AnyEvening.of(shop, seed, 100);
            DayPlan plan = PlanDay.of(shop, evening);
            try (Ledger ledger = Ledger.open(folder.resolve(seed + ".db"))) {
                ledger.closes().close(evening.book());
                ledger.plans().keep(plan, "{}");

                assertThat(ledger.broken(plan.heading().productionDate()))
                        .as("shop %d", seed)
                        .isEmpty();
            }
        }
    }
}
