package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.IfCard;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.SoakCall;
import dawnkettle.plan.WaysOut;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.BiFunction;

/** The planner, each way of asking it in a time box of its own: one that hangs does not take the next with it. */
final class BoxedPlanner {
    /** The search ends by itself at its guard; what comes before and after it has so long (common practice, no source). */
    private static final Duration BESIDES_SEARCH = Duration.ofSeconds(60);

    private final Planner planner;
    private final TimeBox searched;
    private final TimeBox unsearched;
    private final TimeBox advice;
    private final TimeBox searchedCall;
    private final TimeBox unsearchedCall;
    private final TimeBox losses;

    /** What is asked for the soak call of an evening. */
    interface Calls {
        SoakCall call(Shop shop, Evening evening, Instant closesAt);
    }

    /** What is asked for the card of losses of a plan. */
    interface Cards {
        IfCard card(Shop shop, Evening evening, DayPlan plan);
    }

    /** What is asked for a plan, for a soak call, for a card of losses. */
    record Planner(BiFunction<Shop, Evening, DayPlan> plans, Calls calls, Cards cards) {
        static final Planner OURS = new Planner(PlanDay::of, PlanDay::soakCall, IfCard::of);
    }

    BoxedPlanner(Office office) {
        this(
                office,
                Planner.OURS,
                BESIDES_SEARCH.plusMillis(office.papers().settings().search().guardMillis()));
    }

    BoxedPlanner(Office office, Planner planner, Duration limit) {
        this.planner = planner;
        Runnable moving = office.edges().moving();
        this.searched = new TimeBox("planning with search", limit, moving);
        this.unsearched = new TimeBox("planning without search", limit, moving);
        this.advice = new TimeBox("looking for ways out", limit, moving);
        this.searchedCall = new TimeBox("the soak call with search", limit, moving);
        this.unsearchedCall = new TimeBox("the soak call without search", limit, moving);
        this.losses = new TimeBox("working out the if... card", limit, moving);
    }

    DayPlan plan(Shop shop, Evening evening) {
        TimeBox box = evening.budget().decodes() == 0 ? unsearched : searched;
        return box.run(() -> planner.plans().apply(shop, evening));
    }

    List<String> waysOut(Shop shop, Evening evening, DayPlan plan) {
        return advice.run(() -> WaysOut.of(shop, evening, plan));
    }

    SoakCall call(Shop shop, Evening evening, Instant closesAt) {
        TimeBox box = evening.budget().decodes() == 0 ? unsearchedCall : searchedCall;
        return box.run(() -> planner.calls().call(shop, evening, closesAt));
    }

    IfCard card(Shop shop, Evening evening, DayPlan plan) {
        return losses.run(() -> planner.cards().card(shop, evening, plan));
    }
}
