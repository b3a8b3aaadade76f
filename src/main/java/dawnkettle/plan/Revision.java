package dawnkettle.plan;

import dawnkettle.shop.Shop;

final class Revision {
    Revision(Shop shop, Evening evening, DayClock clock, TubTimes times) {}

    DayPlan plan() {
        throw new IllegalStateException();
    }
}
