package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Mail;
import dawnkettle.store.Ledger;
import dawnkettle.store.StepKey;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What wakes a person: once, then by the hour, then that it is over. */
class AlertsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    /** 03:00 on the day. */
    private static final Instant NOW = Instant.parse("2026-12-04T08:00:00Z");

    @TempDir
    Path folder;

    private Ledger ledger;
    private LetterShop shop;
    private Alerts alerts;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LetterShop(ledger, NOW);
        alerts = new Alerts(shop.office, new Letters(shop.office));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void fails(Step step, String why) {
        StepKey key = StepKey.of(step.word(), DAY);
        ledger.steps().due(key, NOW.minus(Duration.ofHours(1)), shop.now);
        ledger.steps().start(key, shop.now);
        ledger.steps().failed(key, shop.now, why);
    }

    private void succeeds(Step step) {
        ledger.steps().start(StepKey.of(step.word(), DAY), shop.now);
        ledger.steps().done(StepKey.of(step.word(), DAY), shop.now, "done");
    }

    private List<String> subjects() {
        return shop.arrived.stream().map(Mail::subject).toList();
    }

    @Test
    void a_file_of_orders_that_was_left_out_is_told_once_and_each_of_its_own() {
        shop.leftOut.add(new OrderSource.LeftOut("web.csv", true, "refused/web.csv.reasons.txt"));
        alerts.run();
        shop.later(Duration.ofMinutes(5));
        alerts.run();
        assertThat(shop.arrived).hasSize(1);
        assertThat(shop.arrived.get(0).body().text())
                .contains("Orders are left out: web.csv, all of it; the reasons stand in")
                .contains("refused/web.csv.reasons.txt")
                .contains("put the file right and drop it again");
        shop.leftOut.add(new OrderSource.LeftOut("shop.csv", false, "taken/shop.csv.refusals.txt"));
        shop.later(Duration.ofHours(2));
        alerts.run();
        assertThat(shop.arrived).hasSize(2);
        assertThat(shop.arrived.get(1).body().text()).contains("shop.csv, some of its orders");
    }

    @Test
    void nothing_the_matter_wakes_nobody() {
        alerts.run();
        assertThat(shop.arrived).isEmpty();
    }

    @Test
    void the_first_is_told_at_once_and_once() {
        fails(Step.SHEETS, "print queue \"office\" does not take it");
        alerts.run();
        shop.later(Duration.ofMinutes(1));
        alerts.run();
        assertThat(subjects())
                .containsExactly("Please look: sheets of 2026-12-04 is not done: print queue \"office\" …");
        assertThat(shop.arrived.get(0).to()).containsExactly("owner@millrace.example");
        assertThat(shop.arrived.get(0).body().text()).isEqualTo("""
                1 thing needs a person by 20:00.

                Sheets of 2026-12-04 is not done: print queue "office" does not take it
                =======================================================================
                What is safe: The plan is made and kept; every sheet lies as a file in
                the tray folder.
                What to do: Look at the printer: power, paper, jam, queue. It is tried
                again by itself.
                By when: 20:00.

                ------------------------------------------------------------------------
                What comes within the hour is told together; when all is over one mail
                says so.
                """);
    }

    @Test
    void what_comes_within_the_hour_is_told_together_with_what_is_still_open() {
        fails(Step.SHEETS, "printer is off");
        alerts.run();
        shop.later(Duration.ofMinutes(10));
        shop.clockDoubt = Optional.of("the clock is not set by the network");
        fails(Step.DAWN_CHECK, "it broke");
        alerts.run();
        assertThat(shop.arrived).hasSize(1);
        shop.later(Duration.ofMinutes(50));
        alerts.run();
        assertThat(shop.arrived).hasSize(2);
        assertThat(shop.arrived.get(1).body().text())
                .contains("2 things need a person by 08:00.")
                .contains("Dawn check of 2026-12-04 is not done: it broke")
                .contains("No dated label is printed: the clock is not set by the network")
                .contains("Told before and still so")
                .contains("- Sheets of 2026-12-04 is not done: printer is off");
    }

    @Test
    void when_all_is_over_one_mail_says_so() {
        fails(Step.SHEETS, "printer is off");
        alerts.run();
        shop.later(Duration.ofMinutes(7));
        succeeds(Step.SHEETS);
        alerts.run();
        alerts.run();
        assertThat(subjects())
                .containsExactly(
                        "Please look: sheets of 2026-12-04 is not done: printer is off",
                        "All clear: the clerk works again by itself");
        assertThat(shop.arrived.get(1).body().text()).contains("- Sheets of 2026-12-04 is not done: printer is off");
    }

    @Test
    void what_was_over_before_anybody_was_told_is_not_told() {
        fails(Step.SHEETS, "printer is off");
        alerts.run();
        shop.later(Duration.ofMinutes(5));
        fails(Step.DAWN_CHECK, "it broke");
        alerts.run();
        succeeds(Step.DAWN_CHECK);
        shop.later(Duration.ofHours(1));
        alerts.run();
        assertThat(shop.arrived).hasSize(1);
    }

    @Test
    void a_night_has_at_most_eight_and_the_last_says_that_it_is() {
        List<Step> steps = List.of(
                Step.SOAK_CALL,
                Step.FALLBACK,
                Step.CLOSE,
                Step.PLAN,
                Step.SHEETS,
                Step.BACKUP,
                Step.DAWN_CHECK,
                Step.LABELS,
                Step.SUMMARY,
                Step.COSTS);
        for (Step step : steps) {
            fails(step, "trouble");
            alerts.run();
            shop.later(Duration.ofHours(1));
        }
        assertThat(shop.arrived).hasSize(8);
        assertThat(shop.arrived.get(7).body().text()).contains("This is the last of these mails tonight");
        shop.later(Duration.ofHours(3));
        alerts.run();
        assertThat(shop.arrived).as("the next night counts anew").hasSize(9);
    }

    @Test
    void a_step_that_was_skipped_is_told_once_and_never_cleared() {
        StepKey key = StepKey.of(Step.BACKUP.word(), DAY);
        ledger.steps().due(key, NOW.minus(Duration.ofDays(1)), shop.now);
        ledger.steps().skipped(key, shop.now, "it was too late to be of use");
        alerts.run();
        shop.later(Duration.ofHours(2));
        alerts.run();
        shop.later(Duration.ofDays(3));
        alerts.run();
        assertThat(subjects()).containsExactly("Please look: backup of 2026-12-04 was skipped: too late to be of use");
    }

    @Test
    void an_alert_that_the_server_does_not_take_waits_in_the_outbox() {
        shop.failures.add(dawnkettle.trouble.DeviceAway.clean("mail server is away", null));
        fails(Step.SHEETS, "printer is off");
        alerts.run();
        assertThat(shop.arrived).isEmpty();
        assertThat(ledger.outbox().waiting()).hasSize(1);
    }
}
