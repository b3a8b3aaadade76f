package dawnkettle.export;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dawnkettle.measure.Mass;
import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Place;
import dawnkettle.trouble.Problem;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/** One object of the open form as it is read; what is not as it should be is said with its path. */
final class Fields {
    private static final JsonMapper READER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
            .build();

    private final String file;
    private final String path;
    private final JsonNode node;

    private Fields(String file, String path, JsonNode node) {
        this.file = file;
        this.path = path;
        this.node = node;
    }

    /**
     * The one object that a text holds.
     *
     * @param file what the text is called where something is wrong with it
     * @throws BadFile where the text is no JSON object
     */
    static Fields of(String file, String text) {
        try {
            Fields all = new Fields(file, "", READER.readTree(text));
            return all.checked(all.node.isObject(), "is not an object; write {…}");
        } catch (JsonProcessingException e) {
            JsonLocation at = e.getLocation();
            Place place = at == null ? Place.of(file) : new Place(file, at.getLineNr(), at.getColumnNr());
            throw new BadFile(List.of(new Problem(place, "the text is not JSON", "write it again from the ledger")));
        }
    }

    String text(String key) {
        return scalar(key, JsonNode::isTextual, "a text").textValue();
    }

    Optional<String> findText(String key) {
        return isNothing(key) ? Optional.empty() : Optional.of(text(key));
    }

    /** The text read by {@code form}, which refuses what it does not know with an exception of its argument or of dates. */
    <T> T word(String key, Function<String, T> form) {
        String text = text(key);
        try {
            return form.apply(text);
        } catch (IllegalArgumentException | DateTimeException e) {
            throw bad(key, "\"" + text + "\" is not known here", "write one of the words of the schema");
        }
    }

    long whole(String key) {
        return scalar(key, JsonNode::canConvertToLong, "a whole number").longValue();
    }

    int count(String key) {
        return scalar(key, node -> node.isIntegralNumber() && node.canConvertToInt(), "a whole number")
                .intValue();
    }

    BigDecimal decimal(String key) {
        return scalar(key, JsonNode::isNumber, "a number").decimalValue();
    }

    boolean flag(String key) {
        return scalar(key, JsonNode::isBoolean, "true or false").booleanValue();
    }

    Mass grams(String key) {
        return Mass.grams(
                scalar(key, grams -> grams.isIntegralNumber() && grams.longValue() >= 0, "whole grams of 0 or more")
                        .longValue());
    }

    /** People as half people. */
    int halves(String key) {
        BigDecimal halves = decimal(key).movePointRight(1).divide(BigDecimal.valueOf(5));
        if (halves.signum() < 0 || halves.stripTrailingZeros().scale() > 0)
            throw bad(key, "\"" + node.get(key) + "\" is not whole or half people", "write 1, 1.5 or 2");
        return halves.intValueExact();
    }

    LocalDate date(String key) {
        return word(key, LocalDate::parse);
    }

    Instant instant(String key) {
        return word(key, text -> OffsetDateTime.parse(text).toInstant());
    }

    boolean isNothing(String key) {
        return !node.hasNonNull(key);
    }

    <T> List<T> list(String key, Function<Fields, T> form) {
        return items(key, form);
    }

    List<String> texts(String key) {
        return items(
                key,
                item -> item.checked(item.node.isTextual(), "is not a text; write \"…\"")
                        .node
                        .textValue());
    }

    List<Integer> wholes(String key) {
        return items(
                key,
                item -> item.checked(item.node.canConvertToInt(), "is not a whole number; write 1, 2 …")
                        .node
                        .intValue());
    }

    <T> Optional<T> find(String key, Function<Fields, T> form) {
        if (isNothing(key)) return Optional.empty();
        Fields one = new Fields(file, path + "/" + key, node.get(key));
        return Optional.of(form.apply(one.checked(one.node.isObject(), "is not an object; write {…}")));
    }

    /** Something is wrong with the value of {@code key}. */
    BadFile bad(String key, String what, String remedy) {
        return new BadFile(List.of(new Problem(Place.of(file), path + "/" + key + " " + what, remedy)));
    }

    private <T> List<T> items(String key, Function<Fields, T> form) {
        JsonNode all = scalar(key, JsonNode::isArray, "a list");
        List<T> read = new ArrayList<>();
        for (int i = 0; i < all.size(); i++)
            read.add(form.apply(new Fields(file, path + "/" + key + "/" + i, all.get(i))));
        return read;
    }

    private JsonNode scalar(String key, Predicate<JsonNode> asked, String kind) {
        if (!node.has(key)) throw bad(key, "is missing", "write " + kind);
        JsonNode value = node.get(key);
        if (!asked.test(value)) throw bad(key, "\"" + value + "\" is not " + kind, "write " + kind);
        return value;
    }

    /** @param complaint what is wrong and, after a semicolon, what to write */
    private Fields checked(boolean sound, String complaint) {
        if (sound) return this;
        String[] parts = complaint.split("; ", 2);
        String subject = path.isEmpty() ? "the text" : path;
        throw new BadFile(List.of(new Problem(Place.of(file), subject + " " + parts[0], parts[1])));
    }
}
