package dawnkettle.night;

import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Shop;

/** A plan as the text that the ledger keeps. */
public interface PlanForm {
    String write(DayPlan plan);

    /** @param counted the shop as the plan was made with, whose yields may not be the written ones */
    default String write(DayPlan plan, Shop counted) {
        return write(plan);
    }

    DayPlan read(String text);
}
