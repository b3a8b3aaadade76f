package dawnkettle.export;

import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.minute;
import static dawnkettle.export.PlanFile.sum;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/** Each van's lots stand ready when it says, and the figures of the run are those of its operations. */
final class VanRules {
    private final PlanFile plan;
    private final Faults faults;

    VanRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        plan.rows("routes").forEach(this::route);
        PlanFile.grouped(plan.rows("routes"), route -> text(route, "route") + " " + plan.localDate(route, "departs"))
                .forEach((van, rows) -> faults.unless(rows.size() == 1, "van-once", van));
        plan.rows("allocation")
                .forEach(one -> faults.unless(
                        plan.rows("routes").stream().anyMatch(route -> carries(route, one)),
                        "allocation-has-van",
                        text(one, "route") + " " + text(one, "deliveryDate")));
        if (!plan.root.path("quality").isNull()) quality(plan.root.path("quality"));
    }

    private boolean carries(JsonNode route, JsonNode one) {
        return text(route, "route").equals(text(one, "route"))
                && plan.localDate(route, "departs").toString().equals(text(one, "deliveryDate"));
    }

    private void route(JsonNode route) {
        String where = text(route, "route");
        OptionalLong packed = plan.rows("allocation").stream()
                .filter(one -> text(one, "source").equals("batch") && carries(route, one))
                .map(one -> plan.get("batches", "lot", text(one, "lot")))
                .map(batch -> plan.ends(text(batch, "id")))
                .flatMap(Optional::stream)
                .mapToLong(Long::longValue)
                .max();
        if (packed.isPresent()) faults.unless(minute(route, "packedBy") == packed.getAsLong(), "packed-by", where);
        long due = minute(route, "departs") - whole(route, "loadMinutes");
        long late = Math.max(0, packed.isPresent() ? packed.getAsLong() - due : 0);
        faults.unless(whole(route, "lateMinutes") == late, "late-minutes", where + ": " + late);
    }

    private void quality(JsonNode quality) {
        long late = sum(plan.rows("routes").stream(), "lateMinutes");
        faults.unless(whole(quality, "lateMinutes") == late, "quality-late", late + " over the routes");
        faults.unless(whole(quality, "decodes") <= whole(quality, "decodeBudget"), "decodes-in-budget", "/quality");
        OptionalLong last = plan.rows("operations").stream()
                .mapToLong(operation -> minute(operation, "end"))
                .max();
        if (last.isEmpty()) return;
        faults.unless(minute(quality, "finish") == last.getAsLong(), "quality-finish", text(quality, "finish"));
        long bound = minute(quality, "lowerBoundFinish");
        faults.unless(bound <= last.getAsLong(), "bound-below-finish", text(quality, "lowerBoundFinish"));
        firstPossibleStart().ifPresent(first -> gap(quality, last.getAsLong() - first, bound - first));
    }

    private void gap(JsonNode quality, long span, long bound) {
        if (bound <= 0) return;
        BigDecimal gap = BigDecimal.valueOf(100 * (span - bound)).divide(BigDecimal.valueOf(bound), 1, RoundingMode.UP);
        faults.unless(
                new BigDecimal(text(quality, "gapPercent")).compareTo(gap) == 0, "quality-gap", "/quality: " + gap);
    }

    /** The first minute at which any batch could be begun: its beans ready, a station of its first step open. */
    private OptionalLong firstPossibleStart() {
        return plan.rows("batches").stream()
                .filter(batch -> plan.parents(text(batch, "id")).isEmpty())
                .flatMapToLong(batch -> {
                    long ready = items(batch, "soaks").stream()
                            .flatMap(part -> plan.find("soak", "tub", text(part, "tub")).stream())
                            .mapToLong(soak -> -Math.floorDiv(
                                    -PlanFile.time(soak, "readyAt").toEpochSecond(), 60L))
                            .max()
                            .orElse(Long.MIN_VALUE);
                    return windows(batch).stream()
                            .filter(open -> minute(open, "until") > ready)
                            .mapToLong(open -> Math.max(ready, minute(open, "from")));
                })
                .min();
    }

    private List<JsonNode> windows(JsonNode batch) {
        String stage = text(plan.recipeOf(batch).path("steps").path(0), "stage");
        return plan.rows("stations").stream()
                .filter(station -> text(station, "stage").equals(stage))
                .flatMap(station -> items(station, "windows").stream())
                .toList();
    }
}
