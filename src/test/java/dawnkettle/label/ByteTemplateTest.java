package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ByteTemplateTest {
    private static byte[] written(String template, Map<String, Integer> numbers, byte... data) {
        ByteRoll roll = new ByteRoll();
        new ByteTemplate(template).write(roll, numbers, data);
        return roll.toBytes();
    }

    @Test
    void characters_bytes_numbers_and_data_stand_in_their_order() {
        assertThat(written(
                        "A<1B>{rows}{rows:byte}{bytes:le16}{bytes:be16}{data}", Map.of("rows", 65, "bytes", 258), (byte)
                                7))
                .containsExactly('A', 0x1B, '6', '5', 65, 2, 1, 1, 2, 7);
    }

    @Test
    void a_number_too_large_for_its_bytes_is_refused() {
        assertThatThrownBy(() -> written("{rows:byte}", Map.of("rows", 256)))
                .hasMessage("\"256\" does not go into 1 byte(s)");
    }

    @Test
    void what_cannot_be_read_is_named_with_its_place() {
        assertThatThrownBy(() -> new ByteTemplate("ab<1>"))
                .hasMessage("\"ab<1>\" cannot be read at character 3; write plain characters, <1B> or {rows}");
        assertThatThrownBy(() -> new ByteTemplate("é")).hasMessageContaining("at character 1");
    }
}
