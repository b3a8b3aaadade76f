package dawnkettle.night;

import dawnkettle.export.PlanJson;
import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Shop;

/** Plans as the service keeps them. */
record JsonPlans(Shop shop) implements PlanForm {
    @Override
    public String write(DayPlan plan) {
        return PlanJson.write(plan, shop);
    }

    @Override
    public DayPlan read(String text) {
        return PlanJson.read(text, shop);
    }
}
