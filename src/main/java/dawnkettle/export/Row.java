package dawnkettle.export;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dawnkettle.measure.Mass;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/** One object of the open form as it is written, key after key in the order of the calls. */
final class Row {
    private static final DateTimeFormatter WITH_OFFSET = new DateTimeFormatterBuilder()
            .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
            .appendOffset("+HH:MM", "+00:00")
            .toFormatter(Locale.ROOT);
    private static final JsonNodeFactory NODES = new JsonNodeFactory(true);

    private final ObjectNode node = NODES.objectNode();

    static <T> ArrayNode rows(List<T> all, Function<T, Row> form) {
        ArrayNode array = NODES.arrayNode();
        all.forEach(one -> array.add(form.apply(one).node));
        return array;
    }

    ObjectNode node() {
        return node;
    }

    Row text(String key, String value) {
        node.put(key, value);
        return this;
    }

    /** The text, or null where there is none. */
    Row text(String key, Optional<String> value) {
        node.put(key, value.orElse(null));
        return this;
    }

    Row texts(String key, List<String> values) {
        ArrayNode array = node.putArray(key);
        values.forEach(array::add);
        return this;
    }

    Row whole(String key, long value) {
        node.put(key, value);
        return this;
    }

    Row wholes(String key, List<Integer> values) {
        ArrayNode array = node.putArray(key);
        values.forEach(array::add);
        return this;
    }

    Row decimal(String key, BigDecimal value) {
        node.put(key, value);
        return this;
    }

    Row flag(String key, boolean value) {
        node.put(key, value);
        return this;
    }

    Row nothing(String key) {
        node.putNull(key);
        return this;
    }

    /** Whole grams; a half is rounded up. */
    Row grams(String key, Mass mass) {
        return whole(key, mass.inGrams(RoundingMode.HALF_UP));
    }

    /** Half people as people: a whole number, or one with a half. */
    Row people(String key, int halves) {
        return halves % 2 == 0 ? whole(key, halves / 2) : decimal(key, BigDecimal.valueOf(halves * 5L, 1));
    }

    Row date(String key, LocalDate date) {
        return text(key, date.toString());
    }

    /** With the offset that holds in the zone at that instant, so that the hour the clocks skip or repeat stays clear. */
    Row instant(String key, Instant instant, ZoneId zone) {
        return text(key, WITH_OFFSET.format(instant.atZone(zone)));
    }

    <T> Row list(String key, List<T> all, Function<T, Row> form) {
        node.set(key, rows(all, form));
        return this;
    }

    /** The object, or null where there is none. */
    <T> Row object(String key, Optional<T> one, Function<T, Row> form) {
        node.set(
                key,
                one.<com.fasterxml.jackson.databind.JsonNode>map(value -> form.apply(value).node)
                        .orElse(NODES.nullNode()));
        return this;
    }
}
