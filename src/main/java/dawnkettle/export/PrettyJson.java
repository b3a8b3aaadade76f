package dawnkettle.export;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;

/** Lays JSON out for the eye: what fits in a long line stays on one, so that a row of the plan is a row of the file. */
final class PrettyJson {
    private static final int WIDTH = 320;
    private static final int INDENT = 2;
    private static final ObjectMapper SCALARS = new ObjectMapper();

    private PrettyJson() {}

    /** Two spaces a level, line feeds only, one at the end; the same value gives the same text on every machine. */
    static String of(JsonNode node) {
        return laid(node, 0, 0) + "\n";
    }

    /** @param column where the text starts on its line, after indent and key */
    private static String laid(JsonNode node, int indent, int column) {
        if (node.isValueNode()) return scalar(node);
        String flat = flat(node);
        boolean rowOfOwn = indent > 0 && column + flat.length() + 1 <= WIDTH;
        return node.isEmpty() || rowOfOwn ? flat : broken(node, indent);
    }

    private static String broken(JsonNode node, int indent) {
        int deeper = indent + INDENT;
        List<String> rows = new ArrayList<>();
        if (node.isObject())
            node.properties().forEach(property -> {
                String key = scalar(TextNode.valueOf(property.getKey())) + ": ";
                rows.add(key + laid(property.getValue(), deeper, deeper + key.length()));
            });
        else node.forEach(item -> rows.add(laid(item, deeper, deeper)));
        String margin = "\n" + " ".repeat(deeper);
        return open(node) + margin + String.join("," + margin, rows) + "\n" + " ".repeat(indent) + close(node);
    }

    private static String flat(JsonNode node) {
        if (node.isValueNode()) return scalar(node);
        List<String> parts = new ArrayList<>();
        if (node.isObject())
            node.properties()
                    .forEach(property ->
                            parts.add(scalar(TextNode.valueOf(property.getKey())) + ": " + flat(property.getValue())));
        else node.forEach(item -> parts.add(flat(item)));
        return open(node) + String.join(", ", parts) + close(node);
    }

    private static String open(JsonNode node) {
        return node.isObject() ? "{" : "[";
    }

    private static String close(JsonNode node) {
        return node.isObject() ? "}" : "]";
    }

    private static String scalar(JsonNode node) {
        if (node.isBigDecimal()) return node.decimalValue().toPlainString();
        try {
            return SCALARS.writeValueAsString(node);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a single value can't be written", e);
        }
    }
}
