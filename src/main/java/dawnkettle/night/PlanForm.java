package dawnkettle.night;

import dawnkettle.plan.DayPlan;

/** A plan as the text that the ledger keeps. */
public interface PlanForm {
    String write(DayPlan plan);

    DayPlan read(String text);
}
