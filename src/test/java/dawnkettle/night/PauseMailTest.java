package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Mail;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A label printer that waits for a person, and the mail that says so at once. */
class PauseMailTest {
    @TempDir
    Path folder;

    private final List<Mail> mails = new ArrayList<>();
    private Ledger ledger;
    private LabelShop shop;

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
        Edges.MailDesk desk = new Edges.MailDesk((mail, date) -> mails.add(mail), null, null);
        return new Office(
                new Office.Papers(
                        shop.office.shop(),
                        shop.office.papers().standing(),
                        new NightSettings(
                                night.times(),
                                night.places(),
                                night.search(),
                                new NightSettings.Mailing(List.of(), alert, List.of(), false, Set.of()))),
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
        assertThat(mails.get(0).subject()).isEqualTo("Please look: the label printer waits");
        assertThat(mails.get(0).body().text().replaceAll("\\s+", " "))
                .contains("What to do: label printer on /dev/x is out of labels; put in labels.")
                .contains("It goes on by itself once that is done.");
        assertThat(mails.get(0).body().html()).contains("prefers-color-scheme:dark");
        assertThat(shop.story)
                .contains("the label printer waits: label printer on /dev/x has its cover open; close it");
    }

    @Test
    void pauses_count_with_the_nights_other_alerts_and_the_last_one_says_so() {
        LabelLog log = new LabelLog(office(List.of("owner@millrace.example")));
        for (int i = 0; i < 2 * Alerts.MOST; i++) {
            log.paused("label printer on /dev/x is out of labels; put in labels");
            shop.now = shop.now.plus(Duration.ofMinutes(31));
        }
        assertThat(mails).hasSize(Alerts.MOST);
        assertThat(mails.get(Alerts.MOST - 1).body().text().replaceAll("\\s+", " "))
                .contains("This is the last of these mails tonight");
        assertThat(shop.story).contains("no mail says so: 8 alerts went out tonight; look at status");
    }

    @Test
    void without_an_address_nobody_is_mailed() {
        new LabelLog(office(List.of())).paused("label printer on /dev/x is paused; press its button");
        assertThat(mails).isEmpty();
    }
}
