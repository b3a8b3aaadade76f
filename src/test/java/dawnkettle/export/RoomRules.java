package dawnkettle.export;

import static dawnkettle.export.PlanFile.halves;
import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.minute;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToLongFunction;
import java.util.stream.LongStream;

/** At no minute do stations or hands hold more than they can. */
final class RoomRules {
    private final PlanFile plan;
    private final Faults faults;

    RoomRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        plan.rows("operations").forEach(this::operation);
        plan.rows("stations").forEach(this::station);
        plan.rows("down").forEach(this::down);
        hands();
    }

    private void operation(JsonNode operation) {
        String where = text(operation, "batch") + " at " + text(operation, "station");
        JsonNode station = plan.get("stations", "station", text(operation, "station"));
        faults.unless(text(station, "stage").equals(text(operation, "stage")), "station-of-the-stage", where);
        boolean inside = items(station, "windows").stream()
                .anyMatch(open -> minute(operation, "start") >= minute(open, "from")
                        && minute(operation, "end") <= minute(open, "until"));
        faults.unless(inside || plan.isBegun(operation), "inside-one-window", where);
        if (station.has("capacityGrams")) occupies(operation, where);
        else {
            long place = whole(operation, "place");
            faults.unless(place >= 1 && place <= whole(station, "places"), "place-within-places", where);
        }
    }

    private void occupies(JsonNode operation, String where) {
        JsonNode batch = plan.get("batches", "id", text(operation, "batch"));
        faults.unless(whole(operation, "occupiesGrams") == whole(batch, "expectedGrams"), "occupies-its-mass", where);
    }

    private void station(JsonNode station) {
        String code = text(station, "station");
        faults.unless(station.has("places") != station.has("capacityGrams"), "places-or-capacity", code);
        List<JsonNode> here = plan.rows("operations").stream()
                .filter(operation -> text(operation, "station").equals(code))
                .toList();
        if (station.has("capacityGrams"))
            load(here, operation -> whole(operation, "occupiesGrams"))
                    .forEach((minute, load) -> faults.unless(
                            load <= whole(station, "capacityGrams"), "capacity-of-station", code + ": " + load + " g"));
        else PlanFile.grouped(here, operation -> whole(operation, "place")).forEach((place, all) -> place(code, all));
    }

    /** Only what was begun before may still be there when a station goes down. */
    private void down(JsonNode down) {
        String code = text(down, "station");
        for (JsonNode operation : plan.rows("operations"))
            if (text(operation, "station").equals(code) && !plan.isBegun(operation))
                faults.unless(
                        !overlaps(operation, "start", "end", down),
                        "nothing-where-it-is-down",
                        text(operation, "batch") + " at " + code);
        for (JsonNode window : items(plan.get("stations", "station", code), "windows"))
            faults.unless(!overlaps(window, "from", "until", down), "window-without-down", code);
    }

    private static boolean overlaps(JsonNode row, String from, String until, JsonNode down) {
        return minute(row, from) < minute(down, "until") && minute(down, "from") < minute(row, until);
    }

    private void place(String station, List<JsonNode> operations) {
        List<JsonNode> inTurn = operations.stream()
                .sorted(Comparator.<JsonNode>comparingLong(operation -> minute(operation, "start"))
                        .thenComparingLong(operation -> minute(operation, "end")))
                .toList();
        for (int i = 1; i < inTurn.size(); i++) {
            JsonNode before = inTurn.get(i - 1);
            JsonNode after = inTurn.get(i);
            String where = station + ": " + text(before, "batch") + " then " + text(after, "batch");
            long gap = minute(after, "start") - minute(before, "end");
            faults.unless(gap >= 0, "one-at-a-place", where);
            faults.unless(gap < 0 || gap >= changeover(station, before, after), "changeover-time", where);
        }
    }

    private long changeover(String station, JsonNode before, JsonNode after) {
        String from = text(plan.get("batches", "id", text(before, "batch")), "recipe");
        String to = text(plan.get("batches", "id", text(after, "batch")), "recipe");
        return plan.rows("changeovers").stream()
                .filter(row -> text(row, "station").equals(station))
                .filter(row -> text(row, "fromRecipe").equals(from)
                        && text(row, "toRecipe").equals(to))
                .mapToLong(row -> whole(row, "minutes"))
                .max()
                .orElse(0);
    }

    private void hands() {
        Map<Long, Long> there = new TreeMap<>();
        for (JsonNode stretch : plan.rows("hands"))
            LongStream.range(minute(stretch, "from"), minute(stretch, "until"))
                    .forEach(minute -> there.merge(minute, halves(stretch, "people"), Long::sum));
        Map<Long, Long> bound = load(plan.rows("operations"), operation -> halves(operation, "hands"));
        List<JsonNode> ahead = plan.rows("operations").stream()
                .filter(operation -> !plan.isBegun(operation))
                .toList();
        Map<Long, Long> planned = load(ahead, operation -> halves(operation, "hands"));
        bound.entrySet().stream()
                .filter(minute -> planned.containsKey(minute.getKey()))
                .filter(minute -> minute.getValue() > there.getOrDefault(minute.getKey(), 0L))
                .findFirst()
                .ifPresent(minute -> faults.unless(
                        false,
                        "hands-there",
                        minute.getValue() + " halves at " + Instant.ofEpochSecond(60 * minute.getKey())));
    }

    private static Map<Long, Long> load(List<JsonNode> operations, ToLongFunction<JsonNode> of) {
        Map<Long, Long> load = new TreeMap<>();
        for (JsonNode operation : operations) {
            long each = of.applyAsLong(operation);
            if (each > 0)
                LongStream.range(minute(operation, "start"), minute(operation, "end"))
                        .forEach(minute -> load.merge(minute, each, Long::sum));
        }
        return load;
    }
}
