package dawnkettle.night;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.KeptMail;
import dawnkettle.mail.Mail;
import dawnkettle.shop.Customer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names and addresses taken out of what is kept; codes and quantities stay. */
class ForgetTest {
    private static final Instant NOW = Instant.parse("2026-12-04T08:00:00Z");
    private static final Customer CUSTOMER = LetterShop.CONF.shop().customers().get(0);

    @TempDir
    Path state;

    private CareShop shop;

    @BeforeEach
    void open() {
        shop = new CareShop(state, NOW);
    }

    @AfterEach
    void close() {
        shop.ledger.close();
    }

    private void sent(String id, String text, Instant at) {
        Mail mail = new Mail(
                id,
                List.of("owner@millrace.example"),
                "About today",
                new Mail.Body(text, "<p></p>", List.of()),
                List.of());
        shop.ledger.outbox().queue(id, mail.subject(), KeptMail.write(mail), at);
        shop.ledger.outbox().sending(id, at);
        shop.ledger.outbox().sent(id, at);
    }

    private Path paper(String name, String text, Duration age) throws IOException {
        Path file = state.resolve("tray").resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
        Files.setLastModifiedTime(file, FileTime.from(NOW.minus(age)));
        return file;
    }

    private boolean ledgerHolds(String words) throws IOException {
        for (String end : List.of("", "-wal")) {
            Path file = state.resolve("ledger.db" + end);
            if (Files.exists(file) && new String(Files.readAllBytes(file), UTF_8).contains(words)) return true;
        }
        return false;
    }

    @Test
    void a_customers_mails_are_emptied_and_that_they_were_sent_stays() throws IOException {
        sent("2026-12-03.summary.1", CUSTOMER.name() + " gets 12 packs", NOW);
        sent("2026-12-03.okara.1", "okara from 06:00", NOW);
        Path eml = paper("mail/2026-12-03.summary.1.eml", "=?utf-8?q?whatever?=", Duration.ZERO);
        Path csv = paper("orders.csv", CUSTOMER.name().toUpperCase(java.util.Locale.ROOT), Duration.ZERO);
        Path other = paper("mail/2026-12-03.okara.1.eml", "okara", Duration.ZERO);
        String stored =
                java.util.Base64.getEncoder().encodeToString((CUSTOMER.name() + " gets 12 packs").getBytes(UTF_8));
        assertThat(ledgerHolds(stored)).isTrue();

        List<String> said = new Forget(shop.office()).customer(CUSTOMER);

        assertThat(said.get(0))
                .isEqualTo(
                        "1 mails that named customer " + CUSTOMER.code() + " are emptied; that they were sent stays.");
        assertThat(shop.ledger.outbox().message("2026-12-03.summary.1")).isEmpty();
        assertThat(shop.ledger
                        .outbox()
                        .find("2026-12-03.summary.1")
                        .orElseThrow()
                        .subject())
                .isEmpty();
        assertThat(shop.ledger.outbox().message("2026-12-03.okara.1")).isNotEmpty();
        assertThat(ledgerHolds(stored)).as("not in a free page either").isFalse();
        assertThat(eml).doesNotExist();
        assertThat(csv).doesNotExist();
        assertThat(other).exists();
        assertThat(shop.ledger.erased().told())
                .containsExactly("2026-12-04T08:00:00Z customer " + CUSTOMER.code() + " asked for it: 1 mails");
    }

    @Test
    void a_mail_that_still_waits_is_left_alone() {
        Mail mail = new Mail(
                "waits", List.of("a@b.example"), "s", new Mail.Body(CUSTOMER.name(), "", List.of()), List.of());
        shop.ledger.outbox().queue("waits", "s", KeptMail.write(mail), NOW);

        new Forget(shop.office()).customer(CUSTOMER);

        assertThat(shop.ledger.outbox().message("waits")).isNotEmpty();
    }

    @Test
    void what_is_older_than_the_shop_keeps_it_goes_with_the_nightly_copy() throws IOException {
        shop.keepYears = 2;
        sent("old", "long ago", NOW.minus(Duration.ofDays(740)));
        sent("young", "last year", NOW.minus(Duration.ofDays(700)));
        Path old = paper("sheets/run.pdf", "x", Duration.ofDays(740));
        Path young = paper("sheets/pick.pdf", "x", Duration.ofDays(700));
        Files.createDirectories(state.resolve("backups"));
        Files.writeString(state.resolve("backups/ledger-2024-11-01.db"), "x");

        assertThat(new Forget(shop.office()).run())
                .isEqualTo(", 1 mails, 1 copies, 1 papers of before 2024-12-04 erased");

        assertThat(shop.ledger.outbox().message("old")).isEmpty();
        assertThat(shop.ledger.outbox().message("young")).isNotEmpty();
        assertThat(old).doesNotExist();
        assertThat(young).exists();
        assertThat(state.resolve("backups/ledger-2024-11-01.db")).doesNotExist();
    }

    @Test
    void without_that_setting_nothing_is_erased() {
        sent("old", "long ago", NOW.minus(Duration.ofDays(7_400)));

        assertThat(new Forget(shop.office()).run()).isEmpty();
        assertThat(shop.ledger.outbox().message("old")).isNotEmpty();
    }
}
