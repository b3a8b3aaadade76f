package dawnkettle.conf;

import dawnkettle.trouble.Place;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** The text of one file, or the problem that kept it from being read. */
final class SourceText {
    /** No shop's list comes near it; something else was copied over the file. */
    static final long LARGEST_BYTES = 5L * 1024 * 1024;

    /** Byte order mark, which some editors put before everything. */
    private static final String MARK = "\uFEFF";

    private final Problems problems;

    SourceText(Problems problems) {
        this.problems = problems;
    }

    Optional<String> read(Path dir, String name) {
        Path file = dir.resolve(name);
        Place place = Place.of(name);
        if (!Files.isRegularFile(file))
            return none(place, "the file is not there", "copy it from the demonstration shop");
        try {
            long size = Files.size(file);
            if (size > LARGEST_BYTES)
                return none(
                        place,
                        "the file has \"" + size + "\" bytes",
                        "no more than " + LARGEST_BYTES + " are read: look what was copied there");
            return decode(name, Files.readAllBytes(file));
        } catch (IOException e) {
            return none(place, "the file cannot be read", "look at its permissions and the disk");
        }
    }

    private Optional<String> decode(String name, byte[] bytes) {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length + 1);
        var result = StandardCharsets.UTF_8.newDecoder().decode(in, out, true);
        String text = out.flip().toString();
        if (text.startsWith(MARK)) text = text.substring(1);
        if (result.isError()) {
            String bad = String.format(Locale.ROOT, "%02X", bytes[in.position()]);
            return none(endOf(name, text), "byte \"" + bad + "\" is not UTF-8", "save the file as UTF-8");
        }
        if (text.isBlank()) return none(Place.of(name), "the file is empty", "copy it from the demonstration shop");
        return Optional.of(text);
    }

    private static Place endOf(String name, String text) {
        int line = 1 + (int) text.chars().filter(c -> c == '\n').count();
        return new Place(name, line, text.length() - text.lastIndexOf('\n'));
    }

    private Optional<String> none(Place place, String what, String remedy) {
        problems.add(place, what, remedy);
        return Optional.empty();
    }
}
