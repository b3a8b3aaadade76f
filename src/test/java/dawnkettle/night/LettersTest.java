package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Bytes;
import dawnkettle.mail.Mail;
import dawnkettle.store.Ledger;
import dawnkettle.store.QueuedMail;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A mail server that fails as it is told to, on a real ledger. */
class LettersTest {
    private static final Instant NOW = Instant.parse("2026-12-04T11:30:00Z");
    private static final Mail MAIL = new Mail(
            "2026-12-04.summary.1",
            List.of("owner@millrace.example"),
            "Fri 4 Dec: all well",
            new Mail.Body(
                    "All is well.\n",
                    "<main>\n<p>All is well.</p>\n</main>\n",
                    List.of(new Mail.Picture("day", Bytes.of(new byte[] {1, 2, 3}), "The day."))),
            List.of(new Mail.Attachment("run.pdf", "application/pdf", Bytes.of(new byte[] {4, 5}))));

    @TempDir
    Path folder;

    private Ledger ledger;
    private LetterShop shop;
    private Letters letters;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LetterShop(ledger, NOW);
        letters = new Letters(shop.office);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private QueuedMail queued() {
        return ledger.outbox().find(MAIL.id()).orElseThrow();
    }

    @Test
    void a_mail_that_the_server_took_is_sent_once() {
        assertThat(letters.send(MAIL)).isEqualTo("Fri 4 Dec: all well");
        letters.send(MAIL);
        letters.deliver();
        assertThat(shop.arrived).containsExactly(MAIL);
    }

    @Test
    void a_mail_goes_at_once_while_the_clock_runs() {
        shop.pace = Duration.ofMillis(3);
        assertThat(letters.send(MAIL)).isEqualTo("Fri 4 Dec: all well");
        assertThat(shop.arrived).containsExactly(MAIL);
    }

    @Test
    void what_was_not_taken_waits_and_goes_out_whole_later_pictures_and_files_with_it() {
        shop.failures.add(DeviceAway.clean("mail server is away", null));
        assertThat(letters.send(MAIL)).isEqualTo("Fri 4 Dec: all well (not sent yet: mail server is away)");
        shop.later(Duration.ofMinutes(4));
        letters.deliver();
        assertThat(shop.arrived).isEmpty();
        shop.later(Duration.ofMinutes(1));
        letters.deliver();
        assertThat(shop.arrived).containsExactly(MAIL);
        assertThat(queued().state()).isEqualTo(QueuedMail.State.SENT);
    }

    @Test
    void waits_grow_from_five_minutes_to_two_hours() {
        assertThat(List.of(0, 1, 2, 3, 4, 5, 9).stream().map(Letters::wait))
                .containsExactly(
                        Duration.ofMinutes(5),
                        Duration.ofMinutes(10),
                        Duration.ofMinutes(20),
                        Duration.ofMinutes(40),
                        Duration.ofMinutes(80),
                        Duration.ofHours(2),
                        Duration.ofHours(2));
    }

    @Test
    void what_may_have_arrived_goes_again_under_the_same_id_and_says_so_first() {
        shop.failures.add(DeviceAway.ambiguous("no answer", null));
        letters.send(MAIL);
        shop.later(Duration.ofMinutes(5));
        letters.deliver();
        assertThat(shop.arrived).hasSize(2).allMatch(mail -> mail.id().equals(MAIL.id()));
        assertThat(shop.arrived.get(1).body().text())
                .startsWith("This mail may have arrived before: the server did not say. It is the");
    }

    @Test
    void a_mail_that_was_on_its_way_when_the_power_went_says_so_too() {
        letters.queue(MAIL);
        ledger.outbox().sending(MAIL.id(), NOW);
        ledger.outbox().interrupted(NOW);
        letters.deliver();
        assertThat(shop.arrived.get(0).body().text()).startsWith("This mail may have arrived before");
    }

    @Test
    void after_two_days_it_is_given_up_and_told() {
        letters.queue(MAIL);
        for (int hour = 0; hour < 60; hour++) {
            shop.failures.clear();
            shop.failures.add(DeviceAway.clean("550 no such mailbox", null));
            letters.deliver();
            shop.later(Duration.ofHours(1));
        }
        assertThat(queued().state()).isEqualTo(QueuedMail.State.REFUSED);
        assertThat(queued().note()).isEqualTo("given up after two days: 550 no such mailbox");
        assertThat(letters.givenUp(NOW)).hasSize(1);
        assertThat(shop.story).contains("mail 2026-12-04.summary.1 is given up after two days: 550 no such mailbox");
    }

    @Test
    void a_mail_kept_in_an_older_form_is_refused_not_sent_half() {
        ledger.outbox()
                .queue(
                        "2026-11-01.summary.1",
                        "old",
                        "just words".getBytes(java.nio.charset.StandardCharsets.UTF_8),
                        NOW);
        letters.deliver();
        assertThat(shop.arrived).isEmpty();
        assertThat(ledger.outbox().find("2026-11-01.summary.1").orElseThrow().note())
                .isEqualTo("it was kept by an older version and can't be sent any more");
    }
}
