package dawnkettle.export;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** A written plan as a stranger reads it: keys and values, and no class of the shop. */
final class PlanFile {
    final JsonNode root;
    final ZoneId zone;

    PlanFile(JsonNode root) {
        this.root = root;
        this.zone = ZoneId.of(text(root, "zone"));
    }

    List<JsonNode> rows(String list) {
        return items(root, list);
    }

    static List<JsonNode> items(JsonNode row, String list) {
        return StreamSupport.stream(row.path(list).spliterator(), false).toList();
    }

    static List<String> texts(JsonNode row, String list) {
        return items(row, list).stream().map(JsonNode::asText).toList();
    }

    Optional<JsonNode> find(String list, String key, String value) {
        return rows(list).stream().filter(row -> text(row, key).equals(value)).findFirst();
    }

    /** What is found, or an empty object, which has no key that a rule asks for. */
    JsonNode get(String list, String key, String value) {
        return find(list, key, value).orElse(root.path("nowhere"));
    }

    static String text(JsonNode row, String key) {
        return row.path(key).asText("");
    }

    static long whole(JsonNode row, String key) {
        return row.path(key).asLong();
    }

    /** People as half people. */
    static long halves(JsonNode row, String key) {
        return new BigDecimal(row.path(key).asText("0"))
                .multiply(BigDecimal.valueOf(2))
                .longValueExact();
    }

    /** Minutes since 1970, UTC. */
    static long minute(JsonNode row, String key) {
        return time(row, key).toEpochSecond() / 60;
    }

    static OffsetDateTime time(JsonNode row, String key) {
        return OffsetDateTime.parse(text(row, key));
    }

    LocalDate localDate(JsonNode row, String key) {
        return time(row, key).atZoneSameInstant(zone).toLocalDate();
    }

    static LocalDate date(JsonNode row, String key) {
        return LocalDate.parse(text(row, key));
    }

    /** A batch's steps by seq. */
    List<JsonNode> steps(String batch) {
        return rows("operations").stream()
                .filter(operation -> text(operation, "batch").equals(batch))
                .sorted(Comparator.comparingLong(operation -> whole(operation, "seq")))
                .toList();
    }

    JsonNode recipeOf(JsonNode batch) {
        return get("recipes", "recipe", text(batch, "recipe"));
    }

    Optional<Long> begins(String batch) {
        return steps(batch).stream().map(step -> minute(step, "start")).min(Long::compare);
    }

    Optional<Long> ends(String batch) {
        return steps(batch).stream().map(step -> minute(step, "end")).max(Long::compare);
    }

    boolean isFrozen(String kind, String id) {
        return rows("frozen").stream()
                .anyMatch(fact ->
                        text(fact, "kind").equals(kind) && text(fact, "id").equals(id));
    }

    /** Since when nothing of a batch can be used. */
    Optional<OffsetDateTime> lostAt(String batch) {
        return rows("frozen").stream()
                .filter(fact -> text(fact, "kind").equals("batch-lost"))
                .filter(fact -> text(fact, "id").equals(batch))
                .map(fact -> time(fact, "at"))
                .findFirst();
    }

    /** Whether a step was begun when the plan was made: what breaks down or who leaves then does not undo it. */
    boolean isBegun(JsonNode operation) {
        return isFrozen("batch-started", text(operation, "batch"))
                && time(operation, "start").isBefore(time(root, "computedAt"));
    }

    /** Batches that feed a batch, with the grams. */
    Map<String, Long> parents(String child) {
        Map<String, Long> parents = new LinkedHashMap<>();
        for (JsonNode batch : rows("batches"))
            for (JsonNode feed : items(batch, "feeds"))
                if (text(feed, "batch").equals(child))
                    parents.merge(text(batch, "id"), whole(feed, "grams"), Long::sum);
        return parents;
    }

    static long sum(Stream<JsonNode> rows, String key) {
        return rows.mapToLong(row -> whole(row, key)).sum();
    }

    static Predicate<JsonNode> same(JsonNode other, String... keys) {
        return row -> Stream.of(keys).allMatch(key -> row.path(key).equals(other.path(key)));
    }

    static <K> Map<K, List<JsonNode>> grouped(List<JsonNode> rows, Function<JsonNode, K> by) {
        Map<K, List<JsonNode>> groups = new LinkedHashMap<>();
        rows.forEach(row ->
                groups.computeIfAbsent(by.apply(row), key -> new ArrayList<>()).add(row));
        return groups;
    }

    static Map<String, Long> totals(List<JsonNode> rows, String by, ToLongFunction<JsonNode> amount) {
        Map<String, Long> totals = new LinkedHashMap<>();
        rows.forEach(row -> totals.merge(text(row, by), amount.applyAsLong(row), Long::sum));
        totals.values().removeIf(total -> total == 0);
        return totals;
    }
}
