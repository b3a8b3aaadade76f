package dawnkettle.conf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How the ledger and its disk are cared for, how long words are kept, and who outside watches. */
class CareSettingsTest {
    @TempDir
    Path dir;

    private CornerShop shop;

    @BeforeEach
    void copy() throws IOException {
        shop = CornerShop.in(dir);
    }

    @Test
    void without_a_word_the_evening_is_looked_at_ballast_is_kept_and_nothing_leaves_or_is_erased() {
        Configuration conf = shop.read();

        assertThat(conf.night().care().selfTests()).isTrue();
        assertThat(conf.night().care().room().free()).isEqualTo(500_000_000L);
        assertThat(conf.night().care().room().ballast()).isEqualTo(64_000_000L);
        assertThat(conf.night().care().copies().second()).isEmpty();
        assertThat(conf.night().care().keepYears()).isZero();
        assertThat(conf.watch()).isEmpty();
    }

    @Test
    void what_is_written_is_read() throws IOException {
        Path key = Files.writeString(dir.resolve("copies.key"), "0f".repeat(32));
        Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
        Configuration conf = shop.appending(
                        "shop.toml",
                        "\n[care]\nfree_megabytes = 900\nballast_megabytes = 0\nsecond_copy = \"/media/stick\"\n"
                                + "copy_key_file = \"" + key + "\"\n[records]\nkeep_years = 3\n"
                                + "[watch]\nurl = \"http://127.0.0.1:8080/a\"\npatience_seconds = 3\n")
                .read();

        assertThat(conf.night().care().room().free()).isEqualTo(900_000_000L);
        assertThat(conf.night().care().room().ballast()).isZero();
        assertThat(conf.night().care().copies().second()).contains(Path.of("/media/stick"));
        assertThat(conf.night().care().copies().key()).contains(key);
        assertThat(conf.night().care().keepYears()).isEqualTo(3);
        assertThat(conf.watch().orElseThrow().patience()).isEqualTo(Duration.ofSeconds(3));
    }

    @Test
    void each_mistake_is_named_with_its_place_and_its_remedy_and_no_address_is_repeated() throws IOException {
        assertThat(shop.appending(
                                "shop.toml",
                                "\n[care]\nfree_megabytes = 1\nballast = 3\ncopy_key_file = \"nowhere\"\n"
                                        + "[records]\nkeep_years = 1\n[watch]\nurl = \"http://elsewhere.example/77\"\n")
                        .problems())
                .allMatch(problem -> problem.startsWith("shop.toml:"))
                .anyMatch(problem -> problem.contains("\"1\"") && problem.contains("50"))
                .anyMatch(problem -> problem.contains("key \"ballast\" is not known here"))
                .anyMatch(problem -> problem.contains("nowhere") && problem.contains("is not there"))
                .anyMatch(problem -> problem.contains("keep_years") && problem.contains("2"))
                .anyMatch(problem -> problem.contains("what stands there is no address that may be called"))
                .noneMatch(problem -> problem.contains("elsewhere"))
                .hasSize(5);
    }
}
