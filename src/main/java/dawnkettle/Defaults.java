package dawnkettle;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;

/** The demonstration shop that comes along in the jar, for whoever has no {@code conf/} of their own yet. */
final class Defaults {
    private static final String ROOT = "/dawnkettle/defaults";

    private Defaults() {}

    /** Its {@code conf/}, with the label designs beside it, in a folder of its own that goes with the process. */
    static Path unpacked() {
        try {
            Path folder = Files.createTempDirectory("dawnkettle");
            URI inside = Defaults.class.getResource(ROOT).toURI();
            if (inside.getScheme().equals("jar")) {
                try (FileSystem jar = FileSystems.newFileSystem(inside, Map.of())) {
                    copy(jar.getPath(ROOT), folder);
                }
            } else copy(Path.of(inside), folder);
            return folder.resolve("conf");
        } catch (IOException e) {
            throw new UncheckedIOException("the demonstration shop can't be unpacked", e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path one : all.toList()) {
                Path target = to.resolve(from.relativize(one).toString());
                if (Files.isDirectory(one)) Files.createDirectories(target);
                else Files.copy(one, target);
                target.toFile().deleteOnExit();
            }
        }
    }
}
