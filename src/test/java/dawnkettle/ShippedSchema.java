package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SchemaRegistryConfig;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/** The JSON Schema that comes along with the program, and what a validator that is not ours says by it. */
final class ShippedSchema {
    private ShippedSchema() {}

    static List<String> problems(String plan) throws IOException {
        return schema().validate(plan, InputFormat.JSON).stream()
                .map(Error::toString)
                .toList();
    }

    private static Schema schema() throws IOException {
        SchemaRegistryConfig config =
                SchemaRegistryConfig.builder().formatAssertionsEnabled(true).build();
        try (InputStream in = Main.class.getResourceAsStream("/dawnkettle/export/plan-1.schema.json")) {
            return SchemaRegistry.withDefaultDialect(
                            SpecificationVersion.DRAFT_2020_12, registry -> registry.schemaRegistryConfig(config))
                    .getSchema(new String(in.readAllBytes(), UTF_8));
        }
    }
}
