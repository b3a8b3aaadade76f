package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Mail;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A label printer that waits for a person, and the mail that says so at once. */
class AlertsTest {
    @TempDir
    Path folder;

    private final List<Mail> mails = new ArrayList<>();
    private Ledger ledger;
    private LabelShop shop;
    private boolean isServerAway;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LabelShop(ledger);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private Office office(List<String> alert) {
        NightSettings night = shop.office.papers().settings();
        Edges edges = shop.office.edges();
        Edges.MailDesk desk = new Edges.MailDesk(
                (mail, date) -> {
                    if (isServerAway) throw DeviceAway.clean("mail server is away", null);
                    mails.add(mail);
                },
                null);
        return new Office(
                new Office.Papers(
                        shop.office.shop(),
                        shop.office.papers().standing(),
                        new NightSettings(
                                night.times(),
                                night.places(),
                                night.search(),
                                new NightSettings.MailTo(night.summaryTo(), alert))),
                ledger,
                shop.office.clock(),
                new Edges(edges.senses(), edges.paper(), edges.labels(), desk, edges.plans()),
                shop.office.story());
    }

    @Test
    void a_pause_is_mailed_once_in_half_an_hour() {
        LabelLog log = new LabelLog(office(List.of("owner@millrace.example")));
        log.paused("label printer on /dev/x is out of labels; put in labels");
        log.paused("label printer on /dev/x is out of labels; put in labels");
        shop.now = shop.now.plus(Duration.ofMinutes(31));
        log.paused("label printer on /dev/x has its cover open; close it");

        assertThat(mails).hasSize(2);
        assertThat(mails.get(0).to()).containsExactly("owner@millrace.example");
        assertThat(mails.get(0).subject()).isEqualTo("Millrace Tofu Works: the label printer waits");
        assertThat(mails.get(0).body().text())
                .isEqualTo("label printer on /dev/x is out of labels; put in labels\n\n"
                        + "It goes on by itself once that is done.\n");
        assertThat(shop.story)
                .contains("the label printer waits: label printer on /dev/x has its cover open; close it");
    }

    @Test
    void without_an_address_nobody_is_mailed() {
        new LabelLog(office(List.of())).paused("label printer on /dev/x is paused; press its button");
        assertThat(mails).isEmpty();
    }

    @Test
    void a_mail_server_that_is_away_stops_no_label() {
        isServerAway = true;
        new LabelLog(office(List.of("owner@millrace.example"))).paused("label printer on /dev/x has a jam; clear it");
        assertThat(shop.story).contains("no mail says so: mail server is away");
    }
}
