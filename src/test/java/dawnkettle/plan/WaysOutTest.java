package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.shop.Shop;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class WaysOutTest {
    /** Shops drawn at random, of which many are far too small for their orders. */
    private static List<String> advice(long seed) {
        Shop shop = AnyShop.of(seed);
        Evening evening = AnyEvening.of(shop, seed, 50);
        return WaysOut.of(shop, evening, PlanDay.of(shop, evening));
    }

    @Test
    void a_day_on_which_all_is_well_has_no_ways_out_and_others_say_what_was_tried() {
        List<String> all = new ArrayList<>();
        for (long seed = 1; seed <= 12; seed++) {
            Shop shop = AnyShop.of(seed);
            Evening evening = AnyEvening.of(shop, seed, 50);
            DayPlan plan = PlanDay.of(shop, evening);
            boolean isWell =
                    plan.lateRoutes() == 0 && plan.orders().stream().allMatch(order -> order.declinedPacks() == 0);
            List<String> advice = WaysOut.of(shop, evening, plan);
            assertThat(advice.isEmpty()).as("seed " + seed).isEqualTo(isWell);
            all.addAll(advice);
        }
        assertThat(all).anyMatch(line -> line.endsWith("remain.") || line.contains("no van late"));
        assertThat(all).anyMatch(line -> line.startsWith("Also planned again, and no better was found"));
        assertThat(all).noneMatch(line -> line.contains("optimal") || line.contains("impossible"));
    }

    /** A stretch that is named gives as much as the whole day would. */
    @Test
    void the_stretch_in_which_a_hand_more_helps_is_named() {
        int stretches = 0;
        for (long seed = 1; seed <= 12; seed++) {
            Shop shop = AnyShop.of(seed);
            for (String line : advice(seed))
                if (line.startsWith("One hand more from "))
                    stretches += shop.floor().crews().stream()
                            .filter(crew -> line.startsWith("One hand more from "
                                    + crew.opening().from() + " to "
                                    + crew.opening().until() + ":"))
                            .count();
        }
        assertThat(stretches).isPositive();
    }

    @Test
    void the_same_day_gives_the_same_ways_out() {
        for (long seed = 1; seed <= 3; seed++) assertThat(advice(seed)).isEqualTo(advice(seed));
    }

    /** What a way is said to give is what a plan of the changed shop gives. */
    @Test
    void a_hand_more_and_an_earlier_start_are_told_with_what_their_plans_have() {
        int told = 0;
        for (long seed = 1; seed <= 12; seed++) {
            Shop shop = AnyShop.of(seed);
            Evening evening = AnyEvening.of(shop, seed, 50);
            List<String> advice = WaysOut.of(shop, evening, PlanDay.of(shop, evening));
            told += told(
                    advice,
                    "One hand more",
                    PlanDay.of(GrowthWay.oneHandMore().shop().apply(shop), evening));
            told += told(
                    advice,
                    "A start 60",
                    PlanDay.of(GrowthWay.startEarlier(60).shop().apply(shop), evening));
        }
        assertThat(told).isPositive();
    }

    private static int told(List<String> advice, String way, DayPlan then) {
        int late = then.routes().stream().mapToInt(PlannedRoute::lateMinutes).sum();
        int packs = then.orders().stream().mapToInt(PlannedOrder::declinedPacks).sum();
        int told = 0;
        for (String line : advice) {
            if (!line.startsWith(way)) continue;
            if (line.contains(" minutes, ")) assertThat(line).contains(late + " remain");
            if (line.contains("no van late")) assertThat(late).isZero();
            if (line.contains(" stay short")) assertThat(line).contains(packs + " stay short");
            if (line.contains("nothing short")) assertThat(packs).isZero();
            told++;
        }
        return told;
    }
}
