package dawnkettle.export;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.OffsetDateTime;
import java.util.List;

/** Which plan it is, and that every instant in it is written in the plan's zone. */
final class HeadingRules {
    private static final List<String> MODES = List.of("full", "no-search", "orders-only", "last-week");
    private static final String INSTANT = "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d.*";

    private final PlanFile plan;
    private final Faults faults;

    HeadingRules(PlanFile plan, Faults faults) {
        this.plan = plan;
        this.faults = faults;
    }

    void check() {
        JsonNode root = plan.root;
        faults.unless(PlanFile.text(root, "schema").equals("dawnkettle-plan/1"), "schema-name", "/schema");
        faults.unless(MODES.contains(PlanFile.text(root, "mode")), "mode-known", PlanFile.text(root, "mode"));
        long revision = PlanFile.whole(root, "revision");
        boolean first = root.path("revisionOf").isNull();
        faults.unless(
                first ? revision >= 1 : PlanFile.whole(root, "revisionOf") < revision,
                "revision-follows",
                revision + " of " + root.path("revisionOf"));
        offsets("", root);
    }

    private void offsets(String path, JsonNode node) {
        if (node.isTextual() && node.asText().matches(INSTANT)) {
            OffsetDateTime time = OffsetDateTime.parse(node.asText());
            faults.unless(
                    plan.zone.getRules().getOffset(time.toInstant()).equals(time.getOffset()), "offset-of-zone", path);
        }
        if (node.isObject()) node.properties().forEach(child -> offsets(path + "/" + child.getKey(), child.getValue()));
        if (node.isArray()) for (int i = 0; i < node.size(); i++) offsets(path + "/" + i, node.get(i));
    }
}
