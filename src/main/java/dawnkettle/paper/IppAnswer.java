package dawnkettle.paper;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What a printer answered (RFC 8010).
 *
 * @param status 0x0000 to 0x00FF went well (RFC 8011, appendix B)
 * @param values by attribute, numbers written as decimals
 */
record IppAnswer(int status, Map<String, List<String>> values) {
    private static final int LAST_DELIMITER = 0x0F;
    private static final int END = 0x03;
    private static final int INTEGER = 0x21;
    private static final int ENUM = 0x23;

    /** @throws IOException where the bytes are no whole answer */
    static IppAnswer read(byte[] bytes) throws IOException {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        try {
            in.getShort();
            int status = in.getShort() & 0xFFFF;
            in.getInt();
            return new IppAnswer(status, values(in));
        } catch (BufferUnderflowException e) {
            throw new IOException("the answer of " + bytes.length + " bytes breaks off", e);
        }
    }

    private static Map<String, List<String>> values(ByteBuffer in) {
        Map<String, List<String>> values = new LinkedHashMap<>();
        String name = "";
        for (int tag = in.get(); tag != END; tag = in.get()) {
            if (tag <= LAST_DELIMITER) continue;
            String own = new String(field(in), UTF_8);
            if (!own.isEmpty()) name = own;
            values.computeIfAbsent(name, key -> new ArrayList<>()).add(value(tag, field(in)));
        }
        return values;
    }

    private static String value(int tag, byte[] field) {
        boolean number = (tag == INTEGER || tag == ENUM) && field.length == 4;
        return number ? Integer.toString(ByteBuffer.wrap(field).getInt()) : new String(field, UTF_8);
    }

    private static byte[] field(ByteBuffer in) {
        int length = in.getShort() & 0xFFFF;
        if (length > in.remaining()) throw new BufferUnderflowException();
        byte[] field = new byte[length];
        in.get(field);
        return field;
    }

    boolean wentWell() {
        return status <= 0x00FF;
    }

    OptionalInt number(String attribute) {
        return values.getOrDefault(attribute, List.of()).stream()
                .filter(value -> value.matches("-?\\d{1,9}"))
                .mapToInt(Integer::parseInt)
                .findFirst();
    }

    List<String> words(String attribute) {
        return values.getOrDefault(attribute, List.of());
    }
}
