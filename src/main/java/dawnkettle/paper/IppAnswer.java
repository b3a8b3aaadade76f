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
 * @param groups as they came: of the answer itself, of the printer, of each job
 */
record IppAnswer(int status, List<Group> groups) {
    private static final int JOB = 0x02;
    private static final int LAST_DELIMITER = 0x0F;
    private static final int END = 0x03;
    private static final int INTEGER = 0x21;
    private static final int ENUM = 0x23;

    /** What is said of one thing: values by attribute, numbers written as decimals. */
    record Group(int tag, Map<String, List<String>> values) {
        OptionalInt number(String attribute) {
            return words(attribute).stream()
                    .filter(value -> value.matches("-?\\d{1,9}|1\\d{9}"))
                    .mapToInt(Integer::parseInt)
                    .findFirst();
        }

        List<String> words(String attribute) {
            return values.getOrDefault(attribute, List.of());
        }

        String word(String attribute) {
            return String.join(" ", words(attribute));
        }
    }

    /** @throws IOException where the bytes are no whole answer */
    static IppAnswer read(byte[] bytes) throws IOException {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        try {
            in.getShort();
            int status = in.getShort() & 0xFFFF;
            in.getInt();
            return new IppAnswer(status, groups(in));
        } catch (BufferUnderflowException e) {
            throw new IOException("the answer of " + bytes.length + " bytes breaks off", e);
        }
    }

    private static List<Group> groups(ByteBuffer in) {
        List<Group> groups = new ArrayList<>();
        groups.add(new Group(0, new LinkedHashMap<>()));
        String name = "";
        for (int tag = in.get(); tag != END; tag = in.get()) {
            if (tag <= LAST_DELIMITER) {
                groups.add(new Group(tag, new LinkedHashMap<>()));
                continue;
            }
            String own = new String(field(in), UTF_8);
            if (!own.isEmpty()) name = own;
            Map<String, List<String>> values = groups.get(groups.size() - 1).values();
            values.computeIfAbsent(name, key -> new ArrayList<>()).add(value(tag, field(in)));
        }
        return groups;
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

    List<Group> jobs() {
        return groups.stream().filter(group -> group.tag() == JOB).toList();
    }

    /** The first there is, whatever it is said of. */
    OptionalInt number(String attribute) {
        return groups.stream()
                .flatMapToInt(group -> group.number(attribute).stream())
                .findFirst();
    }

    List<String> words(String attribute) {
        return groups.stream().flatMap(group -> group.words(attribute).stream()).toList();
    }
}
