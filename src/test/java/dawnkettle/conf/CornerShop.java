package dawnkettle.conf;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.nio.file.StandardCopyOption.REPLACE_EXISTING;

import dawnkettle.trouble.BadFile;
import dawnkettle.trouble.Problem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A small sound shop in a folder of its own, to be broken in one place or several. */
record CornerShop(Path dir) {
    static final Path SOUND = Path.of("src/test/resources/corner");

    static CornerShop in(Path dir) throws IOException {
        try (Stream<Path> files = Files.list(SOUND)) {
            for (Path file : files.toList()) Files.copy(file, dir.resolve(file.getFileName()), REPLACE_EXISTING);
        }
        return new CornerShop(dir);
    }

    /** Writes {@code now} instead of the first {@code before}. */
    CornerShop with(String file, String before, String now) throws IOException {
        String text = Files.readString(dir.resolve(file), UTF_8);
        int at = text.indexOf(before);
        if (at < 0) throw new IllegalArgumentException(file + " does not hold " + before);
        Files.writeString(dir.resolve(file), text.substring(0, at) + now + text.substring(at + before.length()), UTF_8);
        return this;
    }

    /** Writes something behind the end of a file. */
    CornerShop appending(String file, String text) throws IOException {
        return holding(file, Files.readString(dir.resolve(file), UTF_8) + text);
    }

    CornerShop holding(String file, String text) throws IOException {
        Files.writeString(dir.resolve(file), text, UTF_8);
        return this;
    }

    Configuration read() {
        return ReadConfiguration.from(dir);
    }

    /** Every problem as the operator reads it. */
    List<String> problems() {
        try {
            read();
            return List.of();
        } catch (BadFile bad) {
            return bad.problems().stream().map(Problem::toString).toList();
        }
    }
}
