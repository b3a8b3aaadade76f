package dawnkettle.plan;

import dawnkettle.measure.Mass;
import dawnkettle.shop.Shop;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The conservation laws of a plan, counted anew from its rows; the floor's own rules are checked elsewhere. */
final class PlanRules {
    private final Shop shop;
    private final DayPlan plan;
    private final List<String> broken = new ArrayList<>();

    PlanRules(Shop shop, DayPlan plan) {
        this.shop = shop;
        this.plan = plan;
    }

    List<String> broken() {
        orders();
        demand();
        batches();
        labels();
        tubs();
        steps();
        return broken;
    }

    private void hold(boolean rule, String what) {
        if (!rule) broken.add(what);
    }

    private void orders() {
        Map<String, Integer> allocated = new HashMap<>();
        for (Allocation one : plan.allocation())
            allocated.merge(one.order() + "/" + one.line(), one.packs(), Integer::sum);
        for (PlannedOrder order : plan.orders()) {
            String key = order.line().order() + "/" + order.line().line();
            hold(order.plannedPacks() == allocated.getOrDefault(key, 0), key + " planned is not what is allocated");
            hold(order.declinedPacks() == 0 || !order.reason().isEmpty(), key + " is declined without a reason");
        }
    }

    private void demand() {
        for (DemandLine line : plan.demand())
            hold(
                    line.firmPacks() + line.standingPacks() + line.allowancePacks()
                            == line.fromStockPacks() + line.declinedPacks() + line.toMakePacks(),
                    line + " does not add up");
    }

    private void batches() {
        Map<String, Integer> taken = new HashMap<>();
        for (Allocation one : plan.allocation()) taken.merge(one.lot() + one.product(), one.packs(), Integer::sum);
        Set<String> lots = new HashSet<>();
        for (PlannedBatch batch : plan.batches()) {
            hold(lots.add(batch.lot().text()), batch.lot() + " twice");
            Mass out = batch.trim();
            for (PlannedBatch.Filled filled : batch.packs()) {
                var product = shop.product(filled.product());
                out = out.plus(product.net().times(filled.packs()));
                hold(
                        filled.packs() == filled.cases() * product.packsInCase() + filled.loosePacks(),
                        batch.id() + " packs are not cases and loose");
                hold(
                        taken.getOrDefault(batch.lot() + filled.product(), 0) <= filled.packs(),
                        batch.id() + " gives more " + filled.product() + " than it holds");
            }
            for (PlannedBatch.Feed feed : batch.feeds()) out = out.plus(feed.mass());
            hold(out.equals(batch.expected()), batch.id() + " loses mass");
            Mass soaked = Mass.sum(
                    batch.soaks().stream().map(PlannedBatch.FromTub::beans).toList());
            hold(soaked.equals(batch.beans()), batch.id() + " beans are not those of its tubs");
        }
    }

    private void labels() {
        Map<String, Integer> packs = new HashMap<>();
        for (PlannedLabel label : plan.labels()) packs.put(label.lot() + label.product(), label.packs());
        for (PlannedBatch batch : plan.batches())
            for (PlannedBatch.Filled filled : batch.packs())
                hold(
                        packs.getOrDefault(batch.lot() + filled.product(), -1) == filled.packs(),
                        batch.id() + " labels do not cover " + filled.product());
    }

    private void tubs() {
        Set<String> used = new HashSet<>();
        for (PlannedSoak soak : plan.soaks()) {
            hold(used.add(soak.tub()), soak.tub() + " filled twice");
            Mass poured = soak.leftOver();
            for (PlannedBatch batch : plan.batches())
                for (PlannedBatch.FromTub from : batch.soaks())
                    if (from.tub().equals(soak.tub())) poured = poured.plus(from.beans());
            hold(poured.equals(soak.beans()), soak.tub() + " beans are not those of its batches");
            for (String id : soak.batches()) {
                var grind = plan.operationsOf(id).get(0).start();
                hold(!grind.isBefore(soak.readyAt()), id + " is ground before its soak is ready");
                hold(!grind.isAfter(soak.latestGrindAt()), id + " is ground after its beans are spoilt");
            }
        }
    }

    private void steps() {
        for (PlannedBatch batch : plan.batches()) {
            var steps = shop.recipe(batch.recipe()).steps();
            var operations = plan.operationsOf(batch.id());
            hold(operations.size() == steps.size(), batch.id() + " misses steps");
            for (int i = 0; i < Math.min(steps.size(), operations.size()); i++) {
                long minutes = Duration.between(
                                operations.get(i).start(), operations.get(i).end())
                        .toMinutes();
                hold(minutes >= steps.get(i).minutes(), batch.id() + " step " + i + " is too short");
                hold(operations.get(i).stage().equals(steps.get(i).stage()), batch.id() + " step " + i + " elsewhere");
                if (i == 0) continue;
                long wait = Duration.between(
                                operations.get(i - 1).end(), operations.get(i).start())
                        .toMinutes();
                hold(wait >= 0 && wait <= steps.get(i).longestWait().orElse(10_000), batch.id() + " waits wrongly");
            }
        }
    }
}
