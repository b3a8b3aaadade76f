package dawnkettle.export;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import dawnkettle.plan.AnyEvening;
import dawnkettle.plan.AnyShop;
import dawnkettle.plan.PlanDay;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the open form against its JSON Schema (draft 2020-12), by a validator that is not ours. */
class PlanSchemaTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String SCHEMA_TEXT = schemaText();
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(
                    SpecificationVersion.DRAFT_2020_12,
                    registry -> registry.schemaRegistryConfig(SchemaRegistryConfig.builder()
                            .formatAssertionsEnabled(true)
                            .build()))
            .getSchema(SCHEMA_TEXT);
    private static final String SOUND = MillraceDay.TEXT;

    @Test
    void the_plan_of_the_demonstration_shop_conforms() {
        assertThat(problems(SOUND)).isEmpty();
    }

    @Test
    void plans_of_shops_that_never_were_conform() {
        for (long seed = 1; seed <= 15; seed++) {
            Shop shop = AnyShop.of(seed);
            String text = PlanJson.write(PlanDay.of(shop, AnyEvening.of(shop, seed, 0)), shop);
            assertThat(problems(text)).as("shop %d", seed).isEmpty();
        }
    }

    @Test
    void the_schema_is_itself_a_sound_schema() {
        Schema meta = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema("{\"$ref\": \"https://json-schema.org/draft/2020-12/schema\"}");
        assertThat(meta.validate(SCHEMA_TEXT, InputFormat.JSON)).isEmpty();
    }

    @Test
    void every_object_of_the_schema_is_closed_and_every_key_described() throws IOException {
        List<String> open = new ArrayList<>();
        walk("", JSON.readTree(SCHEMA_TEXT), open);
        assertThat(open).isEmpty();
    }

    @TestFactory
    List<DynamicTest> a_plan_that_breaks_the_form_does_not_conform() {
        return List.of(
                broken("an unknown key", plan -> plan.put("note", "hello"), "'note'"),
                broken("a missing key", plan -> plan.remove("hands"), "hands"),
                broken("another version", plan -> plan.put("schema", "dawnkettle-plan/2"), "/schema"),
                broken("an unknown mode", plan -> plan.put("mode", "best"), "/mode"),
                broken(
                        "an instant without offset",
                        plan -> plan.put("computedAt", "2026-12-03T15:00:00"),
                        "/computedAt"),
                broken("a day that never was", plan -> plan.put("productionDate", "2026-02-30"), "/productionDate"),
                broken(
                        "a mass in parts of a gram",
                        plan -> row(plan, "batches").put("beansGrams", 15000.5),
                        "/batches/0/beansGrams"),
                broken("a mass below zero", plan -> row(plan, "batches").put("trimGrams", -1), "/batches/0/trimGrams"),
                broken("a third of a person", plan -> row(plan, "hands").put("people", 0.3), "/hands/0/people"),
                broken(
                        "a station with places and a capacity",
                        plan -> row(plan, "stations").put("capacityGrams", 5),
                        "/stations/0"),
                broken("a lot code of another form", plan -> row(plan, "labels").put("lot", "4-FI-1"), "/labels/0/lot"),
                broken("packs as a text", plan -> row(plan, "orders").put("packs", "12"), "/orders/0/packs"),
                broken(
                        "an unknown key deep inside",
                        plan -> ((ObjectNode) row(plan, "recipes").get("steps").get(0)).put("colour", "red"),
                        "/recipes/0/steps/0"),
                broken("a short GTIN", plan -> row(plan, "labels").put("gtin", "123"), "/labels/0/gtin"));
    }

    private static DynamicTest broken(String what, Consumer<ObjectNode> fault, String named) {
        return DynamicTest.dynamicTest(what, () -> {
            ObjectNode plan = (ObjectNode) JSON.readTree(SOUND);
            fault.accept(plan);
            assertThat(problems(plan.toString())).isNotEmpty().anyMatch(problem -> problem.contains(named));
        });
    }

    private static ObjectNode row(ObjectNode plan, String list) {
        return (ObjectNode) plan.get(list).get(0);
    }

    private static List<String> problems(String text) {
        return SCHEMA.validate(text, InputFormat.JSON).stream()
                .map(Error::toString)
                .toList();
    }

    private static void walk(String path, JsonNode schema, List<String> open) {
        JsonNode keys = schema.get("properties");
        if (keys != null && keys.isObject()) {
            if (!schema.path("additionalProperties").isBoolean()) open.add(path + " takes any key");
            keys.properties().forEach(key -> {
                if (key.getValue().path("description").asText().isBlank())
                    open.add(path + "/" + key.getKey() + " is not described");
            });
        }
        schema.properties().forEach(child -> {
            if (child.getValue().isObject()) walk(path + "/" + child.getKey(), child.getValue(), open);
        });
    }

    private static String schemaText() {
        try (InputStream in = PlanJson.class.getResourceAsStream("plan-1.schema.json")) {
            return new String(in.readAllBytes(), UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
