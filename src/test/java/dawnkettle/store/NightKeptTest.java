package dawnkettle.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Steps, effects, labels and mails across crashes and second runs. */
class NightKeptTest {
    private static final Duration TWO_HOURS = Duration.ofHours(2);

    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final Instant NOW = Instant.parse("2026-12-03T20:00:00Z");
    private static final StepKey CLOSE = StepKey.of("close", DAY);
    private static final String MAIL = "<summary.2026-12-04@millrace.example>";

    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    @Test
    void a_step_is_done_once() {
        StepRows steps = ledger.steps();
        steps.due(CLOSE, NOW, NOW);
        steps.due(CLOSE, NOW.plusSeconds(9), NOW.plusSeconds(9));

        assertThat(steps.start(CLOSE, NOW)).isTrue();
        steps.done(CLOSE, NOW.plusSeconds(1), "12 lines");

        assertThat(steps.start(CLOSE, NOW.plusSeconds(2))).isFalse();
        assertThat(steps.find(CLOSE))
                .contains(new StepRow(CLOSE, StepRow.State.DONE, NOW, 1, NOW.plusSeconds(1), "12 lines"));
        assertThatThrownBy(() -> steps.done(CLOSE, NOW, "again"))
                .hasMessageContaining("a step goes from due to started to done, and is done once");
    }

    @Test
    void a_step_that_was_started_before_a_crash_or_has_failed_is_started_again() {
        StepRows steps = ledger.steps();
        steps.due(CLOSE, NOW, NOW);
        steps.start(CLOSE, NOW);
        close();
        open();

        assertThat(ledger.steps().start(CLOSE, NOW.plusSeconds(60))).isTrue();
        ledger.steps().failed(CLOSE, NOW.plusSeconds(61), "the disk is full");
        assertThat(ledger.steps().open(NOW.plusSeconds(62)))
                .extracting(StepRow::state, StepRow::attempts, StepRow::note)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(StepRow.State.FAILED, 2, "the disk is full"));
        assertThat(ledger.steps().start(CLOSE, NOW.plusSeconds(63))).isTrue();
    }

    @Test
    void a_skipped_step_stays_skipped_and_another_revision_is_a_step_of_its_own() {
        StepRows steps = ledger.steps();
        StepKey second = new StepKey("close", DAY, 2);
        steps.due(CLOSE, NOW, NOW);
        steps.due(second, NOW.plusSeconds(3600), NOW);
        steps.skipped(CLOSE, NOW, "its last useful time was 04:00");

        assertThat(steps.start(CLOSE, NOW)).isFalse();
        assertThat(steps.open(NOW)).isEmpty();
        assertThat(steps.open(NOW.plusSeconds(3600))).extracting(StepRow::key).containsExactly(second);
    }

    @Test
    void an_effect_is_sent_once_and_one_cut_off_by_a_crash_is_ambiguous() {
        EffectRows effects = ledger.effects();
        effects.intend("run.2026-12-04.1", Effect.Kind.SHEET, DAY, NOW);
        assertThat(effects.sending("run.2026-12-04.1", NOW)).isTrue();
        assertThat(effects.sending("run.2026-12-04.1", NOW))
                .as("it is on its way")
                .isFalse();
        close();
        open();

        assertThat(ledger.effects().interrupted(NOW.plusSeconds(60)))
                .extracting(Effect::state, Effect::note)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(
                        Effect.State.AMBIGUOUS, "the service stopped while it was sent"));
        ledger.effects().done("run.2026-12-04.1", NOW.plusSeconds(61), "the queue says completed");
        assertThat(ledger.effects().sending("run.2026-12-04.1", NOW)).isFalse();
        assertThat(ledger.effects()
                        .intend("run.2026-12-04.1", Effect.Kind.SHEET, DAY, NOW)
                        .state())
                .isEqualTo(Effect.State.DONE);
    }

    @Test
    void an_effect_that_surely_did_not_go_out_may_be_sent_again() {
        EffectRows effects = ledger.effects();
        effects.intend("x", Effect.Kind.MAIL, DAY, NOW);
        effects.sending("x", NOW);
        effects.failed("x", NOW, "connection refused");

        assertThat(effects.sending("x", NOW)).isTrue();
        assertThat(effects.find("x").orElseThrow().attempts()).isEqualTo(2);
        assertThatThrownBy(() -> effects.done("y", NOW, "")).hasMessage("no effect y was intended");
    }

    @Test
    void a_label_is_confirmed_once_and_what_is_uncertain_waits_for_a_person() {
        LabelRows labels = ledger.labels();
        labels.confirmed(group(1, 10), NOW);
        labels.uncertain(group(11, 20), NOW, "paper out");

        assertThat(labels.confirmedCount(KeptNight.LOT, "FIRM-12")).isEqualTo(10);
        assertThat(labels.isFrozen(KeptNight.LOT)).isTrue();
        assertThat(labels.isFrozen(KeptNight.FED)).isFalse();
        assertThat(labels.doubtful(KeptNight.LOT, "FIRM-12")).isEqualTo(LabelNumbers.of(11, 20));
        assertThatThrownBy(() -> labels.confirmed(group(10, 12), NOW))
                .hasMessageContaining("a label is confirmed once");

        labels.confirmed(group(11, 20), NOW.plusSeconds(60));
        assertThat(labels.doubtful(KeptNight.LOT, "FIRM-12")).isEqualTo(LabelNumbers.none());
        assertThat(labels.certain(KeptNight.LOT, "FIRM-12")).isEqualTo(LabelNumbers.of(1, 20));
        assertThat(labels.confirmedCount(KeptNight.LOT, "FIRM-12")).isEqualTo(20);
        assertThat(labels.labelledFrom(NOW)).containsExactly(new LabelRows.LabelledLot(KeptNight.LOT, NOW));
    }

    @Test
    void what_is_in_doubt_is_settled_piece_by_piece() {
        LabelRows labels = ledger.labels();
        labels.uncertain(group(11, 20), NOW, "paper out");
        labels.confirmed(group(8, 12), NOW);
        labels.found(group(17, 17), NOW, "on the table");
        labels.destroyed(group(20, 20), NOW, "torn");

        assertThat(labels.doubtful(KeptNight.LOT, "FIRM-12")).hasToString("13 to 16 and 18 to 19");
        assertThat(labels.certain(KeptNight.LOT, "FIRM-12")).hasToString("8 to 12 and 17");
        assertThat(labels.doubtful(KeptNight.FED, "FIRM-12")).hasToString("");
    }

    @Test
    void a_mail_is_queued_once_and_sent_once_and_says_when_it_may_have_gone_out() {
        OutboxRows outbox = ledger.outbox();
        assertThat(outbox.queue(MAIL, "Friday", new byte[] {1, 2}, NOW)).isTrue();
        assertThat(outbox.queue(MAIL, "Friday", new byte[] {9}, NOW)).isFalse();
        assertThat(outbox.message(MAIL)).containsExactly(1, 2);
        assertThat(outbox.sending(MAIL, NOW)).isTrue();
        assertThat(outbox.due(NOW, TWO_HOURS)).isEmpty();
        close();
        open();

        assertThat(ledger.outbox().interrupted(NOW.plusSeconds(60))).isEqualTo(1);
        assertThat(ledger.outbox().due(NOW.plusSeconds(60), TWO_HOURS))
                .extracting(QueuedMail::maybeSent, QueuedMail::attempts)
                .containsExactly(org.assertj.core.groups.Tuple.tuple(true, 1));
        ledger.outbox().sending(MAIL, NOW.plusSeconds(61));
        ledger.outbox().sent(MAIL, NOW.plusSeconds(62));
        assertThat(ledger.outbox().due(NOW.plusSeconds(999), TWO_HOURS)).isEmpty();
        assertThatThrownBy(() -> ledger.outbox().again(MAIL, NOW, false, "why"))
                .hasMessageContaining("a mail is sent once");
    }

    @Test
    void a_mail_that_was_put_off_by_a_clock_a_year_ahead_is_due_at_once() {
        OutboxRows outbox = ledger.outbox();
        outbox.queue(MAIL, "Friday", new byte[] {1}, NOW);
        outbox.sending(MAIL, NOW);
        outbox.again(MAIL, NOW.plus(Duration.ofDays(365)), false, "450 mailbox busy");

        assertThat(outbox.due(NOW, TWO_HOURS)).extracting(QueuedMail::messageId).containsExactly(MAIL);
    }

    @Test
    void a_mail_that_failed_waits_for_its_next_try() {
        OutboxRows outbox = ledger.outbox();
        outbox.queue(MAIL, "Friday", new byte[] {1}, NOW);
        outbox.sending(MAIL, NOW);
        outbox.again(MAIL, NOW.plusSeconds(300), false, "450 mailbox busy");

        assertThat(outbox.due(NOW.plusSeconds(299), TWO_HOURS)).isEmpty();
        assertThat(outbox.due(NOW.plusSeconds(300), TWO_HOURS))
                .containsExactly(new QueuedMail(
                        MAIL,
                        "Friday",
                        QueuedMail.State.WAITING,
                        1,
                        NOW.plusSeconds(300),
                        false,
                        NOW,
                        "450 mailbox busy"));
        outbox.refused(MAIL, NOW, "550 no such user");
        assertThat(outbox.find(MAIL).orElseThrow().state()).isEqualTo(QueuedMail.State.REFUSED);
    }

    @Test
    void a_soak_call_is_kept_as_it_was_and_only_once() {
        assertThat(ledger.soaks().commit(KeptNight.call())).isEqualTo(KeptNight.call());

        var other = new dawnkettle.plan.SoakCall(KeptNight.THURSDAY, NOW, List.of(), List.of(), List.of());
        assertThat(ledger.soaks().commit(other)).isEqualTo(KeptNight.call());
        assertThat(ledger.soaks().find(KeptNight.FRIDAY)).isEmpty();
    }

    private static LabelGroup group(int from, int to) {
        return new LabelGroup(KeptNight.LOT, "FIRM-12", from, to);
    }
}
