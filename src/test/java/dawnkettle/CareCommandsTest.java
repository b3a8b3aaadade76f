package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.conf.ReadConfiguration;
import dawnkettle.shop.Customer;
import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerCopy;
import dawnkettle.store.LedgerHold;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a tired person types when the machine, and not the tofu, is the trouble. */
class CareCommandsTest {
    private static final ZoneId ZONE = ZoneId.of("America/New_York");
    private static final Instant NIGHT = Instant.parse("2026-12-04T08:00:00Z");

    @TempDir
    Path folder;

    private final MovedClock clock = new MovedClock(NIGHT, ZONE);

    private Terminal.Told said(CopiedShop shop, Object... words) {
        Object[] all = new Object[words.length + 4];
        System.arraycopy(words, 0, all, 0, words.length);
        all[words.length] = "--conf";
        all[words.length + 1] = shop.conf();
        all[words.length + 2] = "--ledger";
        all[words.length + 3] = ledger();
        return Terminal.runWith(new SetClock(new Main(), clock), all);
    }

    private Path ledger() {
        return folder.resolve("state/ledger.db");
    }

    private CopiedShop shop() throws IOException {
        Files.createDirectories(folder.resolve("state"));
        return CopiedShop.quick(folder)
                .withoutHistory()
                .with("shop.toml", "state = \"../out/state\"", "state = \"" + folder.resolve("state") + "\"");
    }

    private void copyOf(CopiedShop shop, String day) throws IOException {
        Files.createDirectories(folder.resolve("state/backups"));
        assertThat(said(shop, "order", "C002", "FIRM-400", "24", "2026-12-05").status())
                .isZero();
        try (Ledger ledger = Ledger.open(ledger())) {
            ledger.copyTo(folder.resolve("state/backups/ledger-" + day + ".db")).seal();
        }
    }

    @Test
    void restore_shows_the_copies_and_puts_one_back_and_says_what_is_lost_and_what_to_do() throws IOException {
        CopiedShop shop = shop();
        copyOf(shop, "2026-12-03");
        said(shop, "order", "C002", "MILK-1L", "6", "2026-12-05");

        Terminal.Told list = said(shop, "restore");
        assertThat(list.status()).isZero();
        assertThat(list.out()).containsPattern("  2026-12-03 +[0-9.]+ MB  sound, \\d+ rows");

        Terminal.Told done = said(shop, "restore", "2026-12-03");

        assertThat(done.err()).isEmpty();
        assertThat(done.status()).isZero();
        assertThat(done.out())
                .contains("The copy of 2026-12-03 is in place.")
                .contains("What stood there lies in " + folder.resolve("state/ledger-aside-2026-12-04T03-00-00.db"))
                .contains("1 order from Fri 4 Dec 03:00 on: ")
                .contains("4. Start the service: systemctl start dawnkettle.");
        try (Ledger ledger = Ledger.open(ledger())) {
            assertThat(ledger.rowCounts()).containsEntry("order_line", 1L);
        }
    }

    @Test
    void restore_refuses_while_the_service_runs_and_a_copy_that_is_damaged_or_bare() throws IOException {
        CopiedShop shop = shop();
        copyOf(shop, "2026-12-03");
        try (LedgerHold service = LedgerHold.take(ledger()).orElseThrow()) {
            assertThat(service).isNotNull();
            Terminal.Told held = said(shop, "restore", "2026-12-03");
            assertThat(held.status()).isEqualTo(1);
            assertThat(held.err())
                    .contains("the service is at work on it; stop the service first (systemctl stop dawnkettle)");
        }
        LedgerCopy copy = new LedgerCopy(folder.resolve("state/backups/ledger-2026-12-03.db"));
        String sum = Files.readString(copy.checksumFile());
        Files.delete(copy.checksumFile());
        assertThat(said(shop, "restore", "2026-12-03").err())
                .contains("has no checksum beside it, so that a flipped byte would not be seen");
        Files.writeString(copy.checksumFile(), sum);
        byte[] bytes = Files.readAllBytes(copy.file());
        bytes[bytes.length / 2] ^= 1;
        Files.write(copy.file(), bytes);
        assertThat(said(shop, "restore").out()).contains("NOT SOUND: its bytes are not those that were written");
        assertThat(said(shop, "restore", "2026-12-03").status()).isEqualTo(1);
        assertThat(said(shop, "restore", "2026-12-01").err()).contains("there is no copy of 2026-12-01");
    }

    @Test
    void selftest_says_a_line_a_check() throws IOException {
        Terminal.Told told = said(shop(), "selftest");

        assertThat(told.out())
                .contains("well  what you wrote in conf/: reads well")
                .contains("well  writing: the state folder can be written to")
                .containsPattern("(well|LOOK)  room on the disk: ")
                .containsPattern("(well|LOOK)  clock: ")
                .contains("well  last copy: the first is made tonight")
                .contains("well  what the ledger holds: adds up")
                .containsPattern("(well|LOOK)  time zone rules: ");
        assertThat(told.status()).isEqualTo(told.out().contains("LOOK") ? 1 : 0);
    }

    @Test
    void clock_says_whether_it_is_trusted_and_takes_a_word_for_it() throws IOException {
        CopiedShop shop = shop();

        assertThat(said(shop, "clock", "confirm", "2026-12-05").status()).isEqualTo(2);
        assertThat(said(shop, "clock", "confirm", "2026-12-04").out())
                .startsWith("It is Fri 2026-12-04 03:00 by the clock");
        Terminal.Told told = said(shop, "clock");
        assertThat(told.out()).isEqualTo("The clock is trusted: Fri 2026-12-04 03:00, on a person's word.\n");
        assertThat(told.status()).isZero();
    }

    @Test
    void status_begins_with_the_verdict_and_ends_with_what_comes_next_by_itself() throws IOException {
        CopiedShop shop = shop();
        said(shop, "clock", "confirm", "2026-12-04");

        Terminal.Told told = said(shop, "status");

        assertThat(told.out().lines().findFirst()).contains("All is well.");
        assertThat(told.out().lines().reduce((first, last) -> last).orElseThrow())
                .matches("Next, by itself: [A-Z][a-z]{2} \\d+ Dec \\d\\d:\\d\\d .+ of 2026-12-\\d\\d\\.");
    }

    @Test
    void erase_asks_first_and_then_says_what_it_did() throws IOException {
        CopiedShop shop = shop();

        assertThat(said(shop, "erase", "C002").err()).contains("can't be taken back; add --yes to do it");
        assertThat(said(shop, "erase", "C999", "--yes").err()).contains("is no customer's code");
        assertThat(said(shop, "erase", "C002", "--yes").out())
                .contains("0 mails that named customer C002 are emptied")
                .contains("Now take the row out of customers.csv");
    }

    /** A shop with every account and secret that conf/ can name. */
    private CopiedShop secretive() throws IOException {
        Path secret = Files.writeString(folder.resolve("smtp-secret"), "correct-horse-battery");
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
        return shop().with("shop.toml", "# host = \"mail.millrace.example\"", "host = \"mail.millrace.example\"")
                .with("shop.toml", "# user = \"clerk@millrace.example\"", "user = \"clerkaccount\"")
                .with(
                        "shop.toml",
                        "# secret_file = \"/run/credentials/dawnkettle.service/smtp\"",
                        "secret_file = \"" + secret + "\" # correct-horse-battery")
                .with("shop.toml", "# [watch]", "[watch]")
                .with("shop.toml", "# url = \"https://watch.example/3f2a\"", "url = \"https://watch.example/3f2a\"");
    }

    @Test
    void a_bundle_holds_no_customer_no_address_no_account_and_no_secret() throws IOException {
        CopiedShop shop = secretive();
        Terminal.Told rehearsed = shop.rehearse("2026-12-04T15:00");
        assertThat(rehearsed.status()).isLessThan(2);
        Files.copy(shop.out().resolve("ledger.db"), ledger());
        Files.writeString(ledger().resolveSibling("note.txt"), "");
        clock.moveTo(Instant.parse("2026-12-04T21:00:00Z"));

        Terminal.Told told = said(shop, "bundle", "--out", folder.resolve("sent"));

        assertThat(told.status()).isZero();
        Map<String, String> texts = unzipped(folder.resolve("sent/dawnkettle-bundle-2026-12-04T1600.zip"));
        assertThat(texts)
                .containsKeys(
                        "about.txt",
                        "status.txt",
                        "ledger.txt",
                        "nights.txt",
                        "journal.txt",
                        "plan.json",
                        "conf/shop.toml",
                        "conf/customers.csv",
                        "conf/products.csv");
        assertThat(texts.get("plan.json")).contains("\"C002\"");
        assertThat(texts.get("ledger.txt")).contains("order_line ").contains("CREATE TABLE step");
        String all = String.join("\n", texts.values()).toLowerCase(java.util.Locale.ROOT);
        for (Customer customer : ReadConfiguration.from(shop.conf()).shop().customers()) {
            assertThat(all).doesNotContain(customer.name().toLowerCase(java.util.Locale.ROOT));
            for (String mail : customer.mails())
                assertThat(all).doesNotContain(mail.toLowerCase(java.util.Locale.ROOT));
            if (customer.address().length() > 3)
                assertThat(all).doesNotContain(customer.address().toLowerCase(java.util.Locale.ROOT));
            for (String alias : customer.aliases())
                if (alias.length() > 1)
                    assertThat(all)
                            .doesNotContainPattern("(?<![\\p{L}\\p{N}])"
                                    + java.util.regex.Pattern.quote(alias.toLowerCase(java.util.Locale.ROOT))
                                    + "(?![\\p{L}\\p{N}])");
        }
        assertThat(all)
                .doesNotContain(
                        "@",
                        "correct-horse-battery",
                        "smtp-secret",
                        "clerkaccount",
                        "mail.millrace.example",
                        "3f2a",
                        "millrace lane",
                        "millrace tofu works");
    }

    private static Map<String, String> unzipped(Path file) throws IOException {
        Map<String, String> texts = new TreeMap<>();
        try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(file), UTF_8)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry())
                texts.put(entry.getName(), new String(zip.readAllBytes(), UTF_8));
        }
        return texts;
    }
}
