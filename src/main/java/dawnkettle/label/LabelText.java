package dawnkettle.label;

import java.util.Map;
import java.util.Optional;

/**
 * The words that fill a design.
 *
 * @param fields text by field name
 * @param elements what its symbols carry; empty where the shop has no number of its own, or on a slip
 */
public record LabelText(Map<String, String> fields, Optional<ElementString> elements) {
    public LabelText {
        fields = Map.copyOf(fields);
    }
}
