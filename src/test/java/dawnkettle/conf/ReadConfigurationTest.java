package dawnkettle.conf;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.conf.ProblemCatalogue.Change;
import dawnkettle.conf.ProblemCatalogue.Mistake;
import dawnkettle.trouble.BadFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the operator reads when {@code conf/} is wrong: the catalogue lies in {@code problems.txt}. */
class ReadConfigurationTest {
    private static final String MAIL_FROM = "from = \"clerk@corner.example\"";

    @TempDir
    private Path dir;

    static List<Mistake> mistakes() throws IOException {
        return ProblemCatalogue.read();
    }

    @ParameterizedTest
    @MethodSource("mistakes")
    void a_mistake_is_said_in_full_and_nothing_else_is(Mistake mistake) throws IOException {
        CornerShop shop = CornerShop.in(dir);
        for (Change change : mistake.changes()) shop.with(change.file(), change.before(), change.now());

        assertThat(mistake.said()).isNotEmpty();
        assertThat(shop.problems()).containsExactlyElementsOf(mistake.said());
    }

    @Test
    void a_sound_shop_has_no_problem() throws IOException {
        assertThat(CornerShop.in(dir).problems()).isEmpty();
    }

    @Test
    void a_folder_that_is_not_there_is_said() {
        Path nowhere = Path.of("no-such-folder");

        assertThatThrownBy(() -> ReadConfiguration.from(nowhere))
                .isInstanceOf(BadFile.class)
                .hasMessage("no-such-folder: there is no such folder; name the folder with --conf");
    }

    @Test
    void a_file_that_is_not_there_is_said_once_and_nobody_misses_what_it_held() throws IOException {
        CornerShop shop = CornerShop.in(dir);
        Files.delete(dir.resolve("recipes.toml"));
        Files.delete(dir.resolve("routes.csv"));

        assertThat(shop.problems())
                .containsExactly(
                        "recipes.toml: the file is not there; copy it from the demonstration shop",
                        "routes.csv: the file is not there; copy it from the demonstration shop");
    }

    @Test
    void empty_files_are_said() throws IOException {
        CornerShop shop = CornerShop.in(dir)
                .holding("shop.toml", "")
                .holding("stations.toml", "\n  \n")
                .holding("customers.csv", "\uFEFF");

        assertThat(shop.problems())
                .containsExactly(
                        "customers.csv: the file is empty; copy it from the demonstration shop",
                        "shop.toml: the file is empty; copy it from the demonstration shop",
                        "stations.toml: the file is empty; copy it from the demonstration shop");
    }

    @Test
    void a_byte_that_is_not_utf8_is_said_with_its_place() throws IOException {
        CornerShop shop = CornerShop.in(dir);
        Files.write(dir.resolve("materials.csv"), new byte[] {'c', 'o', 'd', 'e', '\n', 'c', 'a', 'f', (byte) 0xE9});

        assertThat(shop.problems())
                .containsExactly("materials.csv:2:4: byte \"E9\" is not UTF-8; save the file as UTF-8");
    }

    @ParameterizedTest
    @ValueSource(strings = {"shop.toml", "recipes.toml", "products.csv", "standing.csv"})
    void ten_megabytes_are_not_even_opened(String file) throws IOException {
        CornerShop shop = CornerShop.in(dir);
        byte[] garbage = new byte[10_000_000];
        new Random(1).nextBytes(garbage);
        Files.write(dir.resolve(file), garbage);

        assertThat(shop.problems())
                .containsExactly(
                        file
                                + ": the file has \"10000000\" bytes; no more than 5242880 are read: look what was copied there");
    }

    @ParameterizedTest
    @ValueSource(strings = {"shop.toml", "stations.toml"})
    void four_megabytes_of_letters_are_no_toml(String file) throws IOException {
        CornerShop shop = CornerShop.in(dir).holding(file, "garbage ".repeat(500_000));

        assertThat(shop.problems()).isNotEmpty().allMatch(said -> said.startsWith(file + ":1:"));
    }

    @Test
    void four_megabytes_of_letters_are_no_table() throws IOException {
        CornerShop shop = CornerShop.in(dir).holding("prices.csv", "garbage,".repeat(500_000) + "\n");

        assertThat(shop.problems())
                .containsExactly("prices.csv: there is no header row; write one: price_list,product,price,from");
    }

    @Test
    void a_control_character_in_a_value_never_reaches_the_terminal() throws IOException {
        CornerShop shop = CornerShop.in(dir).with("products.csv", "block,400", "block,4\u001B[2J00");

        assertThat(shop.problems())
                .containsExactly("products.csv:3:27: net_g \"4?[2J00\" is not a whole number; "
                        + "write a whole number from 1 to 1000000");
    }

    @Test
    void lines_may_end_as_on_other_systems_and_begin_with_a_mark() throws IOException {
        CornerShop shop = CornerShop.in(dir);
        for (String file : List.of("shop.toml", "recipes.toml", "products.csv", "customers.csv")) {
            String text = Files.readString(dir.resolve(file), UTF_8);
            shop.holding(file, "\uFEFF" + text.replace("\n", "\r\n"));
        }

        assertThat(shop.problems()).isEmpty();
    }

    @Test
    void columns_may_stand_in_any_order() throws IOException {
        CornerShop shop = CornerShop.in(dir)
                .holding("prices.csv", "from,price,product,price_list\n2026-01-01,2.60,FIRM,kitchen\n");

        assertThat(shop.read().shop().prices()).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-r-----", "rw----r--", "rw--w----", "rw-----w-"})
    void a_secret_that_others_can_read_is_refused(String permissions) throws IOException {
        CornerShop shop = withSecret(permissions);

        assertThat(shop.problems())
                .containsExactly(
                        "shop.toml:30:1: secret_file \"secret\" can be read or changed by other users; run chmod 600 on it");
    }

    @Test
    void a_secret_of_the_service_alone_is_taken_but_not_read() throws IOException {
        assertThat(withSecret("rw-------").read().post().secretFile()).contains(dir.resolve("secret"));
        assertThat(withSecret("-w-------").read().post().secretFile()).contains(dir.resolve("secret"));
    }

    @Test
    void the_init_systems_credentials_may_show_their_access_list_as_the_groups_bit() {
        Path credential = Path.of("/run/credentials/dawnkettle.service/smtp");

        assertThat(SecretFile.isOpen(credential, PosixFilePermissions.fromString("r--r-----")))
                .isFalse();
        assertThat(SecretFile.isOpen(credential, PosixFilePermissions.fromString("r--r--r--")))
                .isTrue();
    }

    private CornerShop withSecret(String permissions) throws IOException {
        CornerShop shop = CornerShop.in(dir);
        Path secret = dir.resolve("secret");
        Files.deleteIfExists(secret);
        Files.writeString(secret, "not for others", UTF_8);
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString(permissions));
        return shop.with("shop.toml", MAIL_FROM, MAIL_FROM + "\nuser = \"clerk\"\nsecret_file = \"secret\"");
    }

    @Test
    void no_problem_names_a_customer_or_an_address() throws IOException {
        CornerShop shop = CornerShop.in(dir)
                .with("customers.csv", "wickerby;the grocery", "wickerby;;Osterfell Deli")
                .with("customers.csv", "orders@osterfell.example", "orders@wickerby.example")
                .with("customers.csv", "EARLY,1,2", "EARLY,0,9");

        assertThat(shop.problems())
                .hasSizeGreaterThan(4)
                .noneMatch(said -> said.toLowerCase(Locale.ROOT).matches(".*(wickerby|osterfell|deli|grocery).*"));
    }
}
