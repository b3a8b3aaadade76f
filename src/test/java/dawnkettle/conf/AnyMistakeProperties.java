package dawnkettle.conf;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.trouble.BadFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.ByteRange;
import net.jqwik.api.constraints.IntRange;

/** Whatever happens to a file of the shop, it is read whole or its problems are said; nothing else ever comes out. */
class AnyMistakeProperties {
    private static final List<String> FILES = List.of(
            "shop.toml",
            "recipes.toml",
            "stations.toml",
            "products.csv",
            "routes.csv",
            "customers.csv",
            "standing.csv",
            "calendar.csv",
            "materials.csv",
            "prices.csv");

    @Provide
    Arbitrary<String> files() {
        return Arbitraries.of(FILES);
    }

    @Property(tries = 120)
    void a_file_cut_short_anywhere_is_read_or_said(
            @ForAll("files") String file, @ForAll @IntRange(max = 999) int permille) throws IOException {
        readsOrSays(file, bytes -> Arrays.copyOf(bytes, bytes.length * permille / 1000));
    }

    @Property(tries = 200)
    void a_byte_changed_anywhere_is_read_or_said(
            @ForAll("files") String file,
            @ForAll @IntRange(max = 999) int permille,
            @ForAll @ByteRange(min = 9, max = 126) byte now)
            throws IOException {
        readsOrSays(file, bytes -> {
            bytes[bytes.length * permille / 1000] = now;
            return bytes;
        });
    }

    @Property(tries = 120)
    void a_line_lost_or_twice_is_read_or_said(
            @ForAll("files") String file, @ForAll @IntRange(max = 60) int line, @ForAll boolean twice)
            throws IOException {
        readsOrSays(file, bytes -> {
            List<String> lines = new ArrayList<>(List.of(new String(bytes, UTF_8).split("\n")));
            int at = line % lines.size();
            if (twice) lines.add(at, lines.get(at));
            else lines.remove(at);
            return (String.join("\n", lines) + "\n").getBytes(UTF_8);
        });
    }

    private interface Change {
        byte[] of(byte[] bytes);
    }

    private static void readsOrSays(String file, Change change) throws IOException {
        Path dir = Files.createTempDirectory("corner");
        try {
            CornerShop shop = CornerShop.in(dir);
            Files.write(dir.resolve(file), change.of(Files.readAllBytes(dir.resolve(file))));
            try {
                assertThat(shop.read().shop().house()).isNotNull();
            } catch (BadFile said) {
                assertThat(said.problems()).isNotEmpty();
            }
        } finally {
            for (String name : FILES) Files.deleteIfExists(dir.resolve(name));
            Files.delete(dir);
        }
    }
}
