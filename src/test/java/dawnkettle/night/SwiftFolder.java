package dawnkettle.night;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** A folder in memory where the machine has one, so that thousands of nights do not wait for a disk; gone when closed. */
public record SwiftFolder(Path path) implements AutoCloseable {
    private static final Path MEMORY = Path.of("/dev/shm");

    public static SwiftFolder make() throws IOException {
        String name = "dawnkettle-nights";
        return new SwiftFolder(
                Files.isWritable(MEMORY) ? Files.createTempDirectory(MEMORY, name) : Files.createTempDirectory(name));
    }

    @Override
    public void close() throws IOException {
        empty(path);
    }

    /** Deletes a folder with all that is in it. */
    public static void empty(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path one : all.sorted(Comparator.reverseOrder()).toList()) Files.deleteIfExists(one);
        }
    }
}
