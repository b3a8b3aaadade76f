package dawnkettle.conf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dawnkettle.trouble.BadFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The order mailbox as the demonstration's file explains it, written out. */
class ReadOrderMailboxTest {
    @TempDir
    Path folder;

    @Test
    void without_its_table_no_mail_is_read() {
        assertThat(ReadConfiguration.from(Path.of("conf")).orderMail()).isEmpty();
    }

    @Test
    void the_table_that_the_demonstration_explains_is_read_when_its_keys_are_written_out() throws IOException {
        OrderMailChoice choice =
                ReadConfiguration.from(written("", "")).orderMail().orElseThrow();
        assertThat(choice.box().host()).isEqualTo("imap.millrace.example");
        assertThat(choice.box().vouchedBy()).isEqualTo("mx.millrace.example");
        assertThat(choice.rules().owners()).containsExactly("owner@millrace.example");
        assertThat(choice.rules().crew())
                .isEqualTo(Map.of("hall@millrace.example", Set.of("lost", "count", "yield", "cook", "sold")));
        assertThat(choice.rules().tags()).isEqualTo(Map.of("k7x2m9qa4t", "C001"));
        assertThat(choice.rules().every()).isEqualTo(Duration.ofMinutes(2));
        assertThat(choice.address()).contains("orders@millrace.example");
    }

    @Test
    void answers_go_to_the_address_that_is_named_else_to_the_user_where_it_is_one() throws IOException {
        Path conf = written("address = \"orders@millrace.example\"\n", "");
        assertThat(ReadConfiguration.from(conf).orderMail().orElseThrow().address())
                .contains("orders@millrace.example");
        Path shop = conf.resolve("shop.toml");
        Files.writeString(
                shop, Files.readString(shop).replace("user = \"orders@millrace.example\"", "user = \"orders\""));
        assertThat(ReadConfiguration.from(conf).orderMail().orElseThrow().address())
                .isEmpty();
        Files.writeString(
                shop,
                Files.readString(shop)
                        .replace("user = \"orders\"", "user = \"orders\"\naddress = \"orders at millrace\""));
        assertThat(catchThrowableOfType(BadFile.class, () -> ReadConfiguration.from(conf)))
                .hasMessageContaining("is no mail address; write it as owner@millrace.example");
    }

    @Test
    void words_that_no_crew_may_write_a_guessable_token_and_an_open_password_are_said_and_no_token_repeated()
            throws IOException {
        Path conf = written("lost count yield cook sold\"", "lost release\"");
        Path shop = conf.resolve("shop.toml");
        Files.writeString(
                shop,
                Files.readString(shop)
                        .replace("\"C001 k7x2m9qa4t\"", "\"C001 k7x2\"")
                        .replace("security = \"tls\"", "security = \"none\""));
        BadFile bad = catchThrowableOfType(BadFile.class, () -> ReadConfiguration.from(conf));
        assertThat(bad.getMessage())
                .contains("\"hall@millrace.example lost release\" is not an address and words it may write;"
                        + " write it as \"hall@millrace.example lost count\"")
                .contains("what stands there is no customer's code and a token of its own")
                .contains("\"none\" would send the password in the clear; write tls or starttls")
                .doesNotContain("k7x2\"");
    }

    /** The demonstration's folder with the keys of the table written out. */
    private Path written(String old, String with) throws IOException {
        Path conf = Files.createDirectories(folder.resolve("conf"));
        try (Stream<Path> files = Files.list(Path.of("conf"))) {
            for (Path file : files.filter(Files::isRegularFile).toList())
                Files.copy(file, conf.resolve(file.getFileName()));
        }
        Path secret = Files.writeString(folder.resolve("imap"), "soymilk\n");
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
        Path shop = conf.resolve("shop.toml");
        String text = Files.readString(shop);
        int from = text.indexOf("# [orders_mail]");
        int to = text.indexOf("\n[paper]");
        String table = text.substring(from, to)
                .replaceAll("(?m)^# (\\[orders_mail]|[a-z_]+ = )", "$1")
                .replace("/run/credentials/dawnkettle.service/imap", secret.toString())
                .replace(old, with);
        Files.writeString(shop, text.substring(0, from) + table + text.substring(to));
        return conf;
    }
}
