package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.store.StepKey;
import dawnkettle.trouble.BadFile;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whether the clock may date a label, in front of jumps, long absences and a person's word. */
class ClockGateTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    /** Friday 03:00 at Quillhaven. */
    private static final Instant NOW = Instant.parse("2026-12-04T08:00:00Z");

    @TempDir
    Path state;

    private CareShop shop;
    private ClockGate gate;

    @BeforeEach
    void open() {
        shop = new CareShop(state, NOW);
        gate = new ClockGate(shop.office());
    }

    @AfterEach
    void close() {
        shop.ledger.close();
    }

    private void writtenAt(Instant at) {
        shop.ledger
                .steps()
                .due(StepKey.of("close", at.atZone(java.time.ZoneOffset.UTC).toLocalDate()), at, at);
    }

    private void nobodyVouches() {
        shop.clockDoubt = Optional.of("the clock has not been set");
    }

    @Test
    void where_the_machine_vouches_for_it_and_the_ledger_agrees_it_is_trusted() {
        writtenAt(NOW.minus(Duration.ofHours(9)));

        assertThat(gate.doubt()).isEmpty();
        assertThat(gate.told()).isEqualTo("The clock is trusted: Fri 2026-12-04 03:00.");
    }

    @Test
    void a_clock_that_woke_up_in_the_past_is_not_though_the_machine_vouches_for_it() {
        writtenAt(NOW.plus(Duration.ofHours(3)));

        assertThat(gate.doubt())
                .contains("the clock says Fri 2026-12-04 03:00, and the ledger was written to at Fri 2026-12-04 06:00; "
                        + "set it, or say that it is right: clock confirm 2026-12-04");
    }

    @Test
    void a_persons_word_with_the_right_day_makes_it_trusted() {
        nobodyVouches();
        assertThat(gate.isTrusted()).isFalse();

        assertThat(gate.confirm(FRIDAY))
                .startsWith("It is Fri 2026-12-04 03:00 by the clock; dates are printed again.");

        assertThat(gate.doubt()).isEmpty();
        assertThat(gate.told()).endsWith("on a person's word.");
    }

    @Test
    void another_day_than_the_clock_shows_is_refused() {
        assertThatThrownBy(() -> gate.confirm(FRIDAY.plusDays(1)))
                .isInstanceOf(BadFile.class)
                .hasMessage("clock confirm 2026-12-05: the clock says Fri 2026-12-04 03:00; "
                        + "if it is wrong, set it first (timedatectl set-time), then say this again");
    }

    @Test
    void the_word_holds_for_a_day_and_a_half_of_this_start_and_ends_with_a_jump() {
        nobodyVouches();
        gate.confirm(FRIDAY);

        shop.later(Duration.ofHours(35));
        assertThat(gate.isTrusted()).isTrue();
        shop.later(Duration.ofHours(2));
        assertThat(gate.isTrusted()).isFalse();

        shop.now = NOW;
        shop.boot = "second";
        assertThat(gate.isTrusted()).as("the machine was started anew").isFalse();
        shop.boot = "first";
        assertThat(gate.isTrusted()).isTrue();
        gate.jumped(Duration.ofHours(-3));
        assertThat(gate.isTrusted()).as("it jumped").isFalse();
    }

    @Test
    void a_closed_week_blocks_no_morning_and_two_weeks_of_work_ask_a_person() {
        // 2026-12-25 and the days around it: what counts are working days of the calendar.
        Instant before = NOW.minus(Duration.ofDays(6));
        writtenAt(before);
        gate.lookBack();
        assertThat(gate.doubt()).isEmpty();

        shop.later(Duration.ofDays(9));
        gate.lookBack();
        assertThat(gate.doubt())
                .get()
                .asString()
                .contains("more than 5 working days ago")
                .endsWith("clock confirm 2026-12-13");

        writtenAt(shop.now);
        assertThat(gate.isTrusted())
                .as("what the service writes meanwhile settles nothing")
                .isFalse();
        gate.confirm(LocalDate.of(2026, 12, 13));
        assertThat(gate.doubt()).isEmpty();
        shop.later(Duration.ofDays(3));
        assertThat(gate.doubt()).as("a gap that was answered stays answered").isEmpty();
    }

    @Test
    void a_new_ledger_has_no_gap() {
        gate.lookBack();

        assertThat(gate.doubt()).isEmpty();
    }

    @Test
    void a_jump_is_noticed_by_the_machines_own_count_and_a_slow_tick_is_none() {
        long[] count = {0};
        ClockWatch watch = new ClockWatch(shop.office(), () -> count[0]);

        shop.later(Duration.ofMinutes(7));
        count[0] += Duration.ofMinutes(7).toNanos();
        watch.look();
        shop.later(Duration.ofSeconds(149));
        count[0] += Duration.ofSeconds(60).toNanos();
        watch.look();
        assertThat(shop.story).as("89 s apart").isEmpty();

        shop.later(Duration.ofMinutes(61));
        count[0] += Duration.ofMinutes(1).toNanos();
        watch.look();
        assertThat(shop.story)
                .containsExactly("the clock jumped forward by 3600 s; it is looked at anew before a date is printed");
        watch.look();
        assertThat(shop.story).hasSize(1);
    }
}
