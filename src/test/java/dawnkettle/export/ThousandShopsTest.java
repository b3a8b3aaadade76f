package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading.Mode;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.Shortage;
import dawnkettle.shop.Shop;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * For shops that never were a plan always comes out, in the mode that was asked for, breaks no rule of the independent
 * checker, and says why where it can't serve a line or a van. {@code -Dshops=1000} is the long form.
 */
class ThousandShopsTest {
    private static final int SHOPS = Integer.getInteger("shops", 60);

    /** Other shops than those of the shorter tests. */
    private static final long FIRST = 10_001;

    private static final int SEARCH = 100;

    @Test
    void a_plan_always_comes_out_and_says_why() {
        List<String> broken = new ArrayList<>();
        Map<Mode, Integer> modes = new EnumMap<>(Mode.class);
        int declined = 0;
        int late = 0;
        for (long seed = FIRST; seed < FIRST + SHOPS; seed++) {
            Shop shop = AnyShop.of(seed);
            long decodes = seed % 2 == 0 ? SEARCH : 0;
            try {
                DayPlan plan = PlanDay.of(shop, AnyEvening.of(shop, seed, decodes));
                modes.merge(plan.heading().mode(), 1, Integer::sum);
                if (plan.heading().mode() != (decodes > 0 ? Mode.FULL : Mode.NO_SEARCH))
                    broken.add("shop " + seed + " came out as " + plan.heading().mode());
                for (String fault : PlanCheck.broken(PlanJson.write(plan, shop)))
                    broken.add("shop " + seed + ": " + fault);
                broken.addAll(unsaid(plan, "shop " + seed));
                if (!plan.shortages().isEmpty()) declined++;
                if (plan.lateRoutes() > 0) late++;
            } catch (RuntimeException none) {
                broken.add("shop " + seed + ": no plan: " + none);
            }
        }
        assertThat(broken)
                .as("%s of %d shops, %d with shortages, %d with late vans", modes, SHOPS, declined, late)
                .isEmpty();
        System.getLogger(ThousandShopsTest.class.getName())
                .log(
                        System.Logger.Level.INFO,
                        "{0} shops: {1}, {2} with shortages, {3} with late vans",
                        SHOPS,
                        modes,
                        declined,
                        late);
    }

    /** What is short or late without a word why. */
    private static List<String> unsaid(DayPlan plan, String where) {
        List<String> unsaid = new ArrayList<>();
        for (PlannedOrder order : plan.orders())
            if (order.declinedPacks() > 0 && order.reason().isBlank())
                unsaid.add(where + ": no reason of " + order.line().order());
        for (Shortage shortage : plan.shortages())
            if (shortage.reason().isBlank()) unsaid.add(where + ": no reason of a shortage of " + shortage.product());
        if (plan.lateRoutes() > 0 && plan.advice().isEmpty()) unsaid.add(where + ": vans late, and no word why");
        return unsaid;
    }
}
