package dawnkettle.plan;

import dawnkettle.shop.Shop;

final class WhatIf {
    WhatIf(Shop shop, Evening evening, DayPlan plan) {}

    IfCard card() {
        throw new UnsupportedOperationException();
    }
}
