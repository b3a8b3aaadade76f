package dawnkettle.export;

import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.minute;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.time;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.LongStream;

/** What had happened before a revision stands in it as it stood before. */
final class RevisionRules {
    private final PlanFile before;
    private final PlanFile after;
    private final Faults faults;

    RevisionRules(PlanFile before, PlanFile after, Faults faults) {
        this.before = before;
        this.after = after;
        this.faults = faults;
    }

    void check() {
        faults.unless(
                PlanFile.same(before.root, "productionDate", "zone").test(after.root), "revision-of-the-day", "/");
        faults.unless(
                whole(after.root, "revision") > whole(before.root, "revision")
                        && whole(after.root, "revisionOf") == whole(before.root, "revision"),
                "revision-follows",
                after.root.path("revisionOf").toString());
        faults.unless(
                !time(after.root, "computedAt").isBefore(time(before.root, "computedAt")), "revision-is-later", "/");
        for (JsonNode fact : before.rows("frozen"))
            faults.unless(
                    after.isFrozen(text(fact, "kind"), text(fact, "id")),
                    "frozen-stays-frozen",
                    text(fact, "kind") + " " + text(fact, "id"));
        after.rows("frozen").forEach(this::fact);
        hands();
    }

    private void fact(JsonNode fact) {
        String id = text(fact, "id");
        switch (text(fact, "kind")) {
            case "tub-filled" -> tubFilled(id);
            case "batch-started" -> batchStarted(id);
            case "lot-labelled" -> lotLabelled(id);
            case "route-gone" -> routeGone(id);
            case "batch-lost" -> batchLost(id);
            default -> faults.unless(false, "frozen-kind", text(fact, "kind"));
        }
    }

    /** Whoever is said to be away is taken off the hands that were there, minute by minute, and nobody else. */
    private void hands() {
        Map<Long, Long> away = by("away", after);
        Map<Long, Long> usual = by("hands", before);
        Map<Long, Long> left = by("hands", after);
        by("away", before).forEach((minute, halves) -> usual.computeIfPresent(minute, (any, there) -> there + halves));
        for (var minute : usual.entrySet()) {
            long expected = Math.max(0, minute.getValue() - away.getOrDefault(minute.getKey(), 0L));
            if (left.getOrDefault(minute.getKey(), 0L) == expected) continue;
            faults.unless(
                    false,
                    "hands-less-away",
                    Instant.ofEpochSecond(60 * minute.getKey()).toString());
            return;
        }
    }

    private static Map<Long, Long> by(String list, PlanFile plan) {
        Map<Long, Long> halves = new TreeMap<>();
        for (JsonNode stretch : plan.rows(list))
            LongStream.range(minute(stretch, "from"), minute(stretch, "until"))
                    .forEach(minute -> halves.merge(minute, PlanFile.halves(stretch, "people"), Long::sum));
        return halves;
    }

    private void tubFilled(String tub) {
        unchanged("frozen-tub", tub, "soak", "tub", "beansGrams", "soakGroup", "beanLots", "waterGrams", "fillAt");
    }

    private void batchStarted(String id) {
        unchanged(
                "frozen-batch", id, "batches", "id", "lot", "recipe", "beansGrams", "soaks", "waterGrams", "coagulant");
        OffsetDateTime until = after.lostAt(id).orElse(time(after.root, "computedAt"));
        for (JsonNode step : before.steps(id))
            if (time(step, "start").isBefore(until) && time(step, "start").isBefore(time(after.root, "computedAt")))
                faults.unless(
                        after.steps(id).stream().anyMatch(step::equals),
                        "frozen-operation",
                        id + " step " + text(step, "seq"));
    }

    /** What is lost goes with no van that is still here, and what was made from it is lost as well. */
    private void batchLost(String id) {
        String lot = text(after.get("batches", "id", id), "lot");
        for (JsonNode load : rows(after, "allocation", "lot", lot))
            faults.unless(rows(before, "allocation", "lot", lot).contains(load) && isGone(load), "lost-lot-given", lot);
        for (JsonNode feed : items(after.get("batches", "id", id), "feeds"))
            faults.unless(after.isFrozen("batch-lost", text(feed, "batch")), "made-from-lost", text(feed, "batch"));
    }

    private boolean isGone(JsonNode load) {
        return after.isFrozen("route-gone", text(load, "route"))
                || after.isFrozen("route-gone", text(load, "route") + " " + text(load, "deliveryDate"));
    }

    private void lotLabelled(String lot) {
        String batch = text(after.get("batches", "lot", lot), "id");
        if (after.lostAt(batch).isPresent()) return; // its labels are destroyed with it
        unchanged("frozen-lot", lot, "batches", "lot", "id", "packs", "packDate");
        faults.unless(
                rows(before, "labels", "lot", lot).equals(rows(after, "labels", "lot", lot)), "frozen-label", lot);
    }

    /** @param van the route, or the route and the day where it runs more than once */
    private void routeGone(String van) {
        faults.unless(vans(before, van).equals(vans(after, van)), "frozen-route", van);
        faults.unless(loads(before, van).equals(loads(after, van)), "frozen-load", van);
    }

    private static List<JsonNode> vans(PlanFile plan, String van) {
        return plan.rows("routes").stream()
                .filter(row -> isVan(row, plan.localDate(row, "departs").toString(), van))
                .toList();
    }

    private static List<JsonNode> loads(PlanFile plan, String van) {
        return plan.rows("allocation").stream()
                .filter(row -> isVan(row, text(row, "deliveryDate"), van))
                .toList();
    }

    private static boolean isVan(JsonNode row, String day, String van) {
        return van.equals(text(row, "route")) || van.equals(text(row, "route") + " " + day);
    }

    private void unchanged(String rule, String id, String list, String key, String... facts) {
        List<JsonNode> was = rows(before, list, key, id);
        List<JsonNode> is = rows(after, list, key, id);
        boolean same = was.size() == is.size();
        for (int i = 0; same && i < was.size(); i++)
            same = PlanFile.same(was.get(i), facts).test(is.get(i));
        faults.unless(same, rule, id);
    }

    private static List<JsonNode> rows(PlanFile plan, String list, String key, String id) {
        return items(plan.root, list).stream()
                .filter(row -> text(row, key).equals(id))
                .toList();
    }
}
