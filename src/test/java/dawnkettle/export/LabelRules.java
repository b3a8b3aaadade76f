package dawnkettle.export;

import static dawnkettle.export.PlanFile.date;
import static dawnkettle.export.PlanFile.items;
import static dawnkettle.export.PlanFile.text;
import static dawnkettle.export.PlanFile.whole;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** As many labels as cases, and on each the dates of its lot. */
final class LabelRules {
    private static final DateTimeFormatter YYMMDD = DateTimeFormatter.ofPattern("uuMMdd", Locale.ROOT);

    private final PlanFile plan;
    private final Faults faults;

    LabelRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        for (JsonNode batch : plan.rows("batches")) for (JsonNode packs : items(batch, "packs")) labelled(batch, packs);
        plan.rows("labels").forEach(this::label);
    }

    private void labelled(JsonNode batch, JsonNode packs) {
        String where = text(batch, "lot") + " " + text(packs, "product");
        List<JsonNode> labels = plan.rows("labels").stream()
                .filter(label -> text(label, "lot").equals(text(batch, "lot")))
                .filter(PlanFile.same(packs, "product"))
                .toList();
        faults.unless(labels.size() == 1, "labels-once", where);
        for (JsonNode label : labels) {
            long parts = items(label, "partCases").stream()
                    .mapToLong(JsonNode::asLong)
                    .sum();
            long labelled = whole(label, "cases") * whole(label, "packsInCase") + parts;
            faults.unless(labelled == whole(packs, "packs"), "labels-are-cases", where + ": " + labelled);
            faults.unless(
                    whole(label, "cases") == whole(packs, "cases") && parts == whole(packs, "loosePacks"),
                    "label-cases-of-batch",
                    where);
        }
    }

    private void label(JsonNode label) {
        String where = text(label, "lot") + " " + text(label, "product");
        JsonNode product = plan.get("products", "product", text(label, "product"));
        long inCase = whole(label, "packsInCase");
        faults.unless(inCase == whole(product, "packsInCase"), "packs-in-case", where);
        items(label, "partCases")
                .forEach(part -> faults.unless(
                        part.asLong() > 0 && part.asLong() < inCase, "part-case-is-part", where + ": " + part));
        JsonNode batch = plan.get("batches", "lot", text(label, "lot"));
        faults.unless(text(label, "packDate").equals(text(batch, "packDate")), "label-pack-date", where);
        LocalDate bestBefore = date(label, "packDate").plusDays(whole(product, "shelfLifeDays"));
        faults.unless(date(label, "bestBefore").equals(bestBefore), "best-before", where + ": not " + bestBefore);
        gtin(label, where);
    }

    /** The string by the GS1 General Specifications: (01) GTIN, (15) best before as YYMMDD, (10) lot. */
    private void gtin(JsonNode label, String where) {
        boolean none = label.path("gtin").isNull();
        String gtin = text(label, "gtin");
        faults.unless(none || gtin.matches("[0-9]{14}") && checkDigit(gtin), "gtin-check-digit", where);
        String expected = (none ? "" : "(01)" + gtin) + "(15)" + YYMMDD.format(date(label, "bestBefore")) + "(10)"
                + text(label, "lot");
        faults.unless(text(label, "elementString").equals(expected), "element-string", where + ": not " + expected);
    }

    /** GS1 check digit: weights 3 and 1 from the right, beside the check digit first; all add up to a multiple of ten. */
    private static boolean checkDigit(String gtin) {
        int sum = 0;
        for (int i = 0; i < gtin.length(); i++) sum += (gtin.charAt(i) - '0') * ((gtin.length() - i) % 2 == 0 ? 3 : 1);
        return sum % 10 == 0;
    }
}
