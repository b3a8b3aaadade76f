package dawnkettle.export;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** A written plan in which a fault is planted, by JSON pointer (RFC 6901). */
final class Planted {
    private static final ObjectMapper JSON = new ObjectMapper();

    final ObjectNode root;

    Planted(String plan) {
        try {
            root = (ObjectNode) JSON.readTree(plan);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(e);
        }
    }

    JsonNode at(String pointer) {
        JsonNode node = root.at(pointer);
        if (node.isMissingNode()) throw new IllegalArgumentException("nothing at " + pointer);
        return node;
    }

    Planted put(String pointer, Object value) {
        at(pointer);
        int cut = pointer.lastIndexOf('/');
        JsonNode parent = root.at(pointer.substring(0, cut));
        String key = pointer.substring(cut + 1);
        JsonNode node = JSON.valueToTree(value);
        if (parent.isObject()) ((ObjectNode) parent).set(key, node);
        else ((ArrayNode) parent).set(Integer.parseInt(key), node);
        return this;
    }

    Planted more(String pointer, long by) {
        return put(pointer, at(pointer).asLong() + by);
    }

    Planted later(String pointer, long minutes) {
        return put(
                pointer,
                OffsetDateTime.parse(at(pointer).asText())
                        .plusMinutes(minutes)
                        .toString()
                        .replaceFirst("T(\\d\\d:\\d\\d)([+-])", "T$1:00$2"));
    }

    Planted days(String pointer, long days) {
        return put(pointer, LocalDate.parse(at(pointer).asText()).plusDays(days).toString());
    }

    Planted append(String list, Object value) {
        ((ArrayNode) at(list)).add(JSON.<JsonNode>valueToTree(value));
        return this;
    }

    Planted twice(String list, int index) {
        return append(list, at(list + "/" + index).deepCopy());
    }

    Planted drop(String list, int index) {
        ((ArrayNode) at(list)).remove(index);
        return this;
    }

    /** Pointer of the first row of a list for which something holds. */
    String first(String list, Predicate<JsonNode> holds) {
        JsonNode rows = at(list);
        return list + "/"
                + IntStream.range(0, rows.size())
                        .filter(i -> holds.test(rows.get(i)))
                        .findFirst()
                        .orElseThrow(() -> new IllegalArgumentException("none such in " + list));
    }

    /** Pointer of the first row whose key has a value. */
    String where(String list, String key, String value) {
        return first(list, row -> row.path(key).asText().equals(value));
    }

    List<String> broken() {
        return PlanCheck.broken(root);
    }
}
