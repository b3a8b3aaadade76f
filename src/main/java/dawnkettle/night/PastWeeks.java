package dawnkettle.night;

record PastWeeks(dawnkettle.store.Ledger ledger, dawnkettle.shop.Shop shop) {
    java.util.List<dawnkettle.plan.Allowances.LateDay> lateDays() {
        return java.util.List.of();
    }

    java.util.List<dawnkettle.cost.MadeDay> madeDays() {
        return java.util.List.of();
    }
}
