package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedRoute;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What had happened stands in a revision as it stood; where it does not, the checker says which fact was changed. */
class RevisionCheckTest {
    private static final String VAN = "COLLEGE";

    @Test
    void revisions_of_shops_that_never_were_change_no_fact() {
        for (long seed = 1; seed <= 25; seed++) {
            Shop shop = AnyShop.of(seed);
            Evening evening = AnyEvening.of(shop, seed, 0);
            DayPlan before = PlanDay.of(shop, evening);
            Evening later = later(evening, before, evening.now().plusSeconds(3600 * (1 + seed % 30)));
            String after = PlanJson.write(PlanDay.of(shop, later), shop);
            assertThat(PlanCheck.revisionBroken(PlanJson.write(before, shop), after))
                    .as("shop %d", seed)
                    .isEmpty();
        }
    }

    @Test
    void revisions_of_the_demonstration_shop_change_no_fact_at_any_hour_of_the_day() {
        for (int hour = 2; hour <= 14; hour += 3) {
            Instant now = MillraceDay.at(MillraceDay.DAY, LocalTime.of(hour, 45));
            DayPlan after = PlanDay.of(MillraceDay.SHOP, later(MillraceDay.evening(25), MillraceDay.PLAN, now));
            String text = PlanJson.write(after, MillraceDay.SHOP);
            assertThat(PlanCheck.revisionBroken(MillraceDay.TEXT, text))
                    .as("%d:45", hour)
                    .isEmpty();
        }
    }

    @Test
    void a_revision_of_a_plan_that_was_written_and_read_is_the_same() {
        Shop shop = AnyShop.of(3);
        Evening evening = AnyEvening.of(shop, 3, 0);
        DayPlan before = PlanDay.of(shop, evening);
        DayPlan again = PlanJson.read(PlanJson.write(before, shop), shop);
        Instant now = evening.now().plusSeconds(3600 * 20);
        assertThat(PlanJson.write(PlanDay.of(shop, later(evening, again, now)), shop))
                .isEqualTo(PlanJson.write(PlanDay.of(shop, later(evening, before, now)), shop));
    }

    private static Evening later(Evening evening, DayPlan before, Instant now) {
        return new Evening(
                evening.book(),
                evening.outlook(),
                evening.larder(),
                evening.soakRoom(),
                new Evening.Committed(Optional.of(before), facts(before, now)),
                now,
                evening.budget());
    }

    private static List<Frozen> facts(DayPlan plan, Instant now) {
        List<Frozen> facts = new ArrayList<>();
        for (PlannedSoak soak : plan.soaks())
            if (soak.fillAt().isBefore(now)) facts.add(new Frozen(Frozen.Kind.TUB_FILLED, soak.tub(), soak.fillAt()));
        for (PlannedBatch batch : plan.batches()) {
            Instant start = plan.operationsOf(batch.id()).get(0).start();
            if (!start.isBefore(now)) continue;
            facts.add(new Frozen(Frozen.Kind.BATCH_STARTED, batch.id(), start));
            if (batch.lot().text().endsWith("1"))
                facts.add(new Frozen(Frozen.Kind.LOT_LABELLED, batch.lot().text(), now));
        }
        for (PlannedRoute route : plan.routes())
            if (route.departs().isBefore(now))
                facts.add(new Frozen(Frozen.Kind.ROUTE_GONE, van(plan, route), route.departs()));
        return facts;
    }

    private static String van(DayPlan plan, PlannedRoute route) {
        return route.route() + " "
                + route.departs().atZone(plan.heading().zone()).toLocalDate();
    }

    @Test
    void a_revision_that_changes_nothing_breaks_nothing() {
        assertThat(PlanCheck.revisionBroken(before().root, revision().root)).isEmpty();
    }

    @TestFactory
    Stream<DynamicTest> a_changed_fact_is_found_by_the_name_of_its_rule() {
        return changes().entrySet().stream()
                .map(change -> DynamicTest.dynamicTest(change.getKey(), () -> {
                    Planted after = revision();
                    change.getValue().accept(after);
                    assertThat(PlanCheck.revisionBroken(before().root, after.root))
                            .anyMatch(broken -> broken.startsWith(change.getKey() + ": "));
                }));
    }

    /** For each rule of a revision without losses a change that breaks it. */
    static Map<String, Consumer<Planted>> changes() {
        Map<String, Consumer<Planted>> changes = new LinkedHashMap<>();
        changes.put("revision-of-the-day", p -> p.put("/productionDate", "2026-12-05"));
        changes.put("revision-follows", p -> p.put("/revisionOf", 2));
        changes.put("revision-is-later", p -> p.put("/computedAt", "2026-12-03T14:00:00-05:00"));
        changes.put("frozen-stays-frozen", p -> p.drop("/frozen", 0));
        changes.put("frozen-kind", p -> p.put("/frozen/0/kind", "sold"));
        changes.put("frozen-tub", p -> p.later("/soak/0/fillAt", 1));
        changes.put("frozen-batch", p -> p.more("/batches/0/beansGrams", -5_000));
        changes.put("frozen-operation", p -> p.put("/operations/0/station", "MILL-9"));
        changes.put("frozen-lot", p -> p.more("/batches/0/packs/0/packs", -1));
        changes.put("frozen-label", p -> p.days("/labels/0/bestBefore", 1));
        changes.put("frozen-route", p -> p.later(p.where("/routes", "route", VAN) + "/departs", 5));
        changes.put("frozen-load", p -> p.more(p.where("/allocation", "route", VAN) + "/packs", 1));
        changes.put(
                "hands-less-away",
                p -> p.root.putArray("away")
                        .addObject()
                        .put("from", "2026-12-04T05:00:00-05:00")
                        .put("until", "2026-12-04T06:00:00-05:00")
                        .put("people", 1));
        return changes;
    }

    private static Planted before() {
        Planted plan = new Planted(MillraceDay.TEXT);
        plan.append("/frozen", fact("tub-filled", "T01"));
        return plan;
    }

    /** The Friday's plan again at 02:50, with what had happened by then. */
    private static Planted revision() {
        Planted plan = before();
        plan.append("/frozen", fact("batch-started", "B01"));
        plan.append("/frozen", fact("lot-labelled", plan.at("/batches/0/lot").asText()));
        plan.append("/frozen", fact("route-gone", VAN + " 2026-12-04"));
        plan.put("/computedAt", "2026-12-04T02:50:00-05:00");
        return plan.put("/revision", 2).put("/revisionOf", 1);
    }

    private static Map<String, String> fact(String kind, String id) {
        return Map.of("kind", kind, "id", id, "at", "2026-12-04T02:30:00-05:00");
    }
}
