package dawnkettle.label;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What one case's label says.
 *
 * @param product its name
 * @param dated lot and dates
 * @param holds how much is in the case
 * @param says what the law wants said
 * @param elements what its symbols carry; empty where the shop has no number of its own
 */
public record CaseLabel(String product, Dated dated, Holds holds, Says says, Optional<ElementString> elements) {
    /**
     * @param lot the lot code
     * @param packed the pack date in words
     * @param dateWord what stands before the date, as "Best before"
     * @param date the date in words
     */
    public record Dated(String lot, String packed, String dateWord, String date) {}

    /**
     * @param packs packs in this case
     * @param packsInCase packs in a whole case
     * @param each net quantity of a pack in both systems of units
     * @param net net quantity of this case in both systems of units
     */
    public record Holds(int packs, int packsInCase, String each, String net) {
        boolean isPart() {
            return packs < packsInCase;
        }
    }

    /**
     * @param ingredients the list, without its heading
     * @param contains allergens, without their heading
     * @param storage how to keep it
     * @param maker who made it
     * @param place where
     */
    public record Says(String ingredients, String contains, String storage, String maker, String place) {}

    /** The fields that a case design may name. */
    public Map<String, String> fields() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("product", product);
        fields.put("lot", dated.lot());
        fields.put("packed", dated.packed());
        fields.put("dateWord", dated.dateWord());
        fields.put("date", dated.date());
        fields.put("packs", Integer.toString(holds.packs()));
        fields.put("packsInCase", Integer.toString(holds.packsInCase()));
        fields.put("part", holds.isPart() ? "PART CASE " + holds.packs() + " of " + holds.packsInCase() : "");
        fields.put("each", holds.each());
        fields.put("net", holds.net());
        fields.put("ingredients", says.ingredients());
        fields.put("contains", says.contains());
        fields.put("storage", says.storage());
        fields.put("maker", says.maker());
        fields.put("place", says.place());
        fields.put("gtin", elements.flatMap(string -> string.value("01")).orElse(""));
        fields.put("copy", "");
        return fields;
    }

    public LabelText text() {
        return new LabelText(fields(), elements);
    }

    /** The same, marked as printed once more. */
    public LabelText copy() {
        Map<String, String> fields = fields();
        fields.put("copy", "COPY");
        return new LabelText(fields, elements);
    }
}
