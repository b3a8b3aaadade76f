package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.WaysOut;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.util.List;
import java.util.function.BiFunction;

/** The planner, each way of asking it in a time box of its own: one that hangs does not take the next with it. */
final class BoxedPlanner {
    /** The search ends by itself at its guard; what comes before and after it has so long (common practice, no source). */
    private static final Duration BESIDES_SEARCH = Duration.ofSeconds(60);

    private final BiFunction<Shop, Evening, DayPlan> planner;
    private final TimeBox searched;
    private final TimeBox unsearched;
    private final TimeBox advice;

    BoxedPlanner(Office office) {
        this(
                office,
                PlanDay::of,
                BESIDES_SEARCH.plusMillis(office.papers().settings().search().guardMillis()));
    }

    BoxedPlanner(Office office, BiFunction<Shop, Evening, DayPlan> planner, Duration limit) {
        this.planner = planner;
        Runnable moving = office.edges().moving();
        this.searched = new TimeBox("planning with search", limit, moving);
        this.unsearched = new TimeBox("planning without search", limit, moving);
        this.advice = new TimeBox("looking for ways out", limit, moving);
    }

    DayPlan plan(Shop shop, Evening evening) {
        TimeBox box = evening.budget().decodes() == 0 ? unsearched : searched;
        return box.run(() -> planner.apply(shop, evening));
    }

    List<String> waysOut(Shop shop, Evening evening, DayPlan plan) {
        return advice.run(() -> WaysOut.of(shop, evening, plan));
    }
}
