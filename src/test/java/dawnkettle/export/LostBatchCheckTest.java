package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Disruption;
import dawnkettle.plan.Evening;
import dawnkettle.plan.Heading.Frozen;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.WhatHappened;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * A batch that is lost, and one made from it, may be cut short and may lose their labels; the checker is as strict with all
 * others, and with what is given of the lost. Every rule that was loosened for them has a fault planted beside it.
 */
class LostBatchCheckTest {
    private static final DayPlan BEFORE = MillraceDay.PLAN;
    private static final PlannedBatch PARENT = BEFORE.batches().stream()
            .filter(batch -> !batch.feeds().isEmpty())
            .findFirst()
            .orElseThrow();
    private static final PlannedBatch CHILD = BEFORE.batch(PARENT.feeds().get(0).batch());

    /** The child is begun, and then its parent turns out to be bad. */
    private static final Instant NOW =
            BEFORE.operationsOf(CHILD.id()).get(1).start().plusSeconds(60);

    private static final String AFTER = PlanJson.write(PlanDay.of(MillraceDay.SHOP, lost()), MillraceDay.SHOP);

    private static Evening lost() {
        Evening evening = MillraceDay.evening(25);
        List<Frozen> facts = new ArrayList<>(WhatHappened.by(BEFORE, NOW));
        facts.add(new Frozen(Frozen.Kind.LOT_LABELLED, PARENT.lot().text(), NOW));
        facts.add(new Frozen(Frozen.Kind.LOT_LABELLED, other().lot().text(), NOW));
        return new Evening(
                evening.book(),
                evening.outlook(),
                evening.larder(),
                evening.soakRoom(),
                new Evening.Committed(Optional.of(BEFORE), facts, Disruption.lost(PARENT.id(), NOW)),
                NOW,
                evening.budget());
    }

    /** A batch with packs that has nothing to do with the lost ones. */
    private static PlannedBatch other() {
        return BEFORE.batches().stream()
                .filter(batch -> !batch.packs().isEmpty() && !batch.equals(PARENT) && !batch.equals(CHILD))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_day_planned_again_after_a_loss_breaks_no_rule_and_changes_no_fact() {
        assertThat(PlanCheck.broken(AFTER)).isEmpty();
        assertThat(PlanCheck.revisionBroken(MillraceDay.TEXT, AFTER)).isEmpty();
        Planted after = new Planted(AFTER);
        assertThat(frozen(after, "batch-lost"))
                .extracting(fact -> fact.path("id").asText())
                .contains(PARENT.id(), CHILD.id());
    }

    private static List<JsonNode> frozen(Planted plan, String kind) {
        List<JsonNode> facts = new ArrayList<>();
        plan.at("/frozen").forEach(fact -> {
            if (fact.path("kind").asText().equals(kind)) facts.add(fact);
        });
        return facts;
    }

    /** Rules of a revision that have a fault here and in no other test. */
    static Set<String> faultsOfRevisions() {
        return Set.of("lost-lot-given", "made-from-lost");
    }

    @TestFactory
    Stream<DynamicTest> a_fault_planted_beside_a_lost_batch_is_found_by_the_name_of_its_rule() {
        Map<String, Consumer<Planted>> faults = new LinkedHashMap<>();
        faults.put(
                "lost-lot-given: given to a customer",
                p -> p.put(ofBatch(p) + "/lot", PARENT.lot().text()));
        faults.put("made-from-lost: the child is not lost", p -> found(p, CHILD.id()));
        faults.put("frozen-stays-frozen: a second revision finds it again", p -> found(p, PARENT.id()));
        faults.put("frozen-operation: a step done before the loss is gone", p -> without(p, PARENT.id(), 1));
        faults.put("frozen-lot: labels of a sound lot are changed", p -> p.more(packs(p) + "/packs", -1));
        faults.put("frozen-label: a label of a sound lot is changed", p -> p.days(label(p) + "/bestBefore", -1));
        return faults.entrySet().stream()
                .map(fault -> DynamicTest.dynamicTest(fault.getKey(), () -> {
                    Planted after = new Planted(AFTER);
                    Planted before = new Planted(fault.getKey().startsWith("frozen-stays") ? AFTER : MillraceDay.TEXT);
                    if (fault.getKey().startsWith("frozen-stays"))
                        after.more("/revision", 1).more("/revisionOf", 1);
                    fault.getValue().accept(after);
                    assertThat(PlanCheck.revisionBroken(before.root, after.root))
                            .anyMatch(broken -> broken.startsWith(fault.getKey().split(":")[0] + ": "));
                }));
    }

    @TestFactory
    Stream<DynamicTest> what_a_lost_batch_may_do_no_other_may() {
        Map<String, Consumer<Planted>> faults = new LinkedHashMap<>();
        faults.put("every-step-once: a sound batch is cut short", p -> without(p, other().id(), last(p, other().id())));
        faults.put("every-step-once: a lost batch has a hole", p -> without(p, PARENT.id(), 2));
        faults.put("every-step-once: it is not lost", p -> found(p, CHILD.id()));
        faults.put("inside-one-window: not begun, and its station is closed", p -> closed(p, ahead(p)));
        faults.put("hands-there: not begun, and nobody is there", p -> p.put("/hands", List.of()));
        faults.put("nothing-where-it-is-down: not begun, and its station is down", LostBatchCheckTest::down);
        faults.put(
                "grind-when-ready: kept and told of, but long ahead",
                p -> unready(ahead(p, other().id()), other().id()));
        faults.put(
                "grind-when-ready: begun, and nobody is told",
                p -> unready(p, other().id()).put("/warnings", List.of()));
        faults.put("start-not-in-the-past: begun without a record", p -> unbegun(p, other().id()));
        return faults.entrySet().stream()
                .map(fault -> DynamicTest.dynamicTest(fault.getKey(), () -> {
                    Planted after = new Planted(AFTER);
                    fault.getValue().accept(after);
                    assertThat(after.broken())
                            .anyMatch(broken -> broken.startsWith(fault.getKey().split(":")[0] + ": "));
                }));
    }

    /** A batch that is begun is ground when it is ground; where its beans were not ready, people are told. */
    @Test
    void a_batch_that_is_begun_and_told_of_may_be_ground_early() {
        Planted after = unready(new Planted(AFTER), other().id());
        assertThat(after.broken()).noneMatch(broken -> broken.startsWith("grind-when-ready"));
    }

    /** Its tub, which only this batch may have, is ready later than it is ground, and a warning says so. */
    private static Planted unready(Planted plan, String batch) {
        plan.append("/warnings", batch + " is ground at 03:00 but tub T01 is ready at 04:00: look at the beans.");
        String tub =
                plan.at(plan.where("/batches", "id", batch) + "/soaks/0/tub").asText();
        String soak = plan.where("/soak", "tub", tub);
        for (JsonNode other : plan.at("/batches"))
            if (!other.path("id").asText().equals(batch)
                    && other.path("soaks").toString().contains('"' + tub + '"'))
                plan.append("/warnings", other.path("id").asText() + " is ground at 03:00");
        JsonNode first = plan.at(plan.first(
                "/operations",
                step -> step.path("batch").asText().equals(batch)
                        && step.path("seq").asInt() == 1));
        return plan.put(soak + "/readyAt", first.path("start")).later(soak + "/readyAt", 5);
    }

    /** As if the plan had been made the evening before, when nothing of the batch was begun. */
    private static Planted ahead(Planted plan, String batch) {
        unbegun(plan, batch);
        plan.drop("/frozen", index(plan.where("/frozen", "id", other().lot().text())));
        return plan.put("/computedAt", "2026-12-03T18:00:00-05:00");
    }

    /** What was begun before the station went down stays there, and is no fault. */
    @Test
    void what_was_begun_before_a_station_went_down_is_no_fault() {
        Planted after = new Planted(AFTER);
        JsonNode begun = after.at(after.first(
                "/operations",
                step -> step.path("start")
                                        .asText()
                                        .compareTo(after.at("/computedAt").asText())
                                < 0
                        && step.path("end")
                                        .asText()
                                        .compareTo(after.at("/computedAt").asText())
                                > 0));
        row(after, begun.path("station"), after.at("/computedAt"), begun.path("end"));
        assertThat(after.broken()).noneMatch(broken -> broken.startsWith("nothing-where-it-is-down"));
    }

    private static String ofBatch(Planted plan) {
        return plan.where("/allocation", "source", "batch");
    }

    private static void found(Planted plan, String batch) {
        plan.drop(
                "/frozen",
                index(plan.first(
                        "/frozen",
                        fact -> fact.path("kind").asText().equals("batch-lost")
                                && fact.path("id").asText().equals(batch))));
    }

    private static int index(String pointer) {
        return Integer.parseInt(pointer.substring(pointer.lastIndexOf('/') + 1));
    }

    private static void without(Planted plan, String batch, int seq) {
        plan.drop(
                "/operations",
                index(plan.first(
                        "/operations",
                        step -> step.path("batch").asText().equals(batch)
                                && step.path("seq").asInt() == seq)));
    }

    private static int last(Planted plan, String batch) {
        int last = 0;
        for (JsonNode step : plan.at("/operations"))
            if (step.path("batch").asText().equals(batch))
                last = Math.max(last, step.path("seq").asInt());
        return last;
    }

    private static String packs(Planted plan) {
        return plan.where("/batches", "id", other().id()) + "/packs/0";
    }

    private static String label(Planted plan) {
        return plan.where("/labels", "lot", other().lot().text());
    }

    /** A step that begins after the plan was made. */
    private static JsonNode ahead(Planted plan) {
        return plan.at(plan.first(
                "/operations",
                step -> step.path("start")
                                .asText()
                                .compareTo(plan.at("/computedAt").asText())
                        > 0));
    }

    private static void closed(Planted plan, JsonNode step) {
        ((ArrayNode) plan.at(
                        plan.where("/stations", "station", step.path("station").asText()) + "/windows"))
                .removeAll();
    }

    private static void down(Planted plan) {
        JsonNode step = ahead(plan);
        row(plan, step.path("station"), step.path("start"), step.path("end"));
    }

    private static void row(Planted plan, JsonNode station, JsonNode from, JsonNode until) {
        ObjectNode row = plan.root.putArray("down").addObject();
        row.set("station", station);
        row.set("from", from);
        row.set("until", until);
    }

    private static void unbegun(Planted plan, String batch) {
        plan.drop(
                "/frozen",
                index(plan.first(
                        "/frozen",
                        fact -> fact.path("kind").asText().equals("batch-started")
                                && fact.path("id").asText().equals(batch))));
    }
}
