package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Mail;
import dawnkettle.store.ClockRows;
import dawnkettle.store.LedgerCopy;
import dawnkettle.store.StepKey;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is asked in the evening, and who hears of it. */
class SelfTestTest {
    private static final LocalDate THURSDAY = LocalDate.of(2026, 12, 3);
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    /** Thursday 17:00 at Quillhaven. */
    private static final Instant EVENING = Instant.parse("2026-12-03T22:00:00Z");

    @TempDir
    Path state;

    private CareShop shop;

    @BeforeEach
    void open() {
        shop = new CareShop(state, EVENING);
    }

    @AfterEach
    void close() {
        shop.ledger.close();
    }

    private List<SelfTest.Finding> wrong() {
        return new SelfTest(shop.office())
                .look(FRIDAY).stream()
                        .filter(one -> !one.isWell() && !one.what().equals("time zone rules"))
                        .toList();
    }

    private String only() {
        assertThat(wrong()).hasSize(1);
        return wrong().get(0).what() + ": " + wrong().get(0).said();
    }

    private void backUpLastNight() {
        StepKey key = StepKey.of("backup", THURSDAY);
        shop.ledger.steps().due(key, EVENING, EVENING);
        shop.ledger.steps().start(key, EVENING);
        shop.ledger.steps().done(key, EVENING, new BackUp(shop.office()).run(THURSDAY));
    }

    @Test
    void on_a_fresh_machine_all_is_well_and_nobody_is_written_to() {
        shop.probes.add(new Probe("office printer", "", "", () -> "answers"));

        assertThat(wrong()).isEmpty();
        assertThat(Files.exists(state.resolve("ballast"))).isTrue();
        assertThat(shop.sent).isEmpty();
    }

    @Test
    void what_does_not_answer_is_told_in_one_mail_with_what_is_safe_and_what_to_do_until_when() {
        shop.probes.add(new Probe(
                "label printer", "No label is printed twice by itself.", "Look at the label printer tonight.", () -> {
                    throw DeviceAway.clean("label printer on /dev/x is not there; plug it in", null);
                }));
        shop.probes.add(new Probe("mail account", "", "", () -> {
            throw new IllegalStateException("no such host");
        }));

        String note = new SelfTest(shop.office()).run(FRIDAY);

        assertThat(note)
                .contains(
                        "to look at: label printer on /dev/x is not there; plug it in; mail account could not be asked");
        assertThat(shop.sent).hasSize(1);
        Mail mail = shop.sent.get(0);
        assertThat(mail.subject()).startsWith("Please look: label printer on /dev/x is not there");
        assertThat(mail.body().text())
                .contains("What is safe: No label is printed twice by itself.")
                .contains("What to do: Look at the label printer tonight.")
                .contains("By when: ");
        new SelfTest(shop.office()).run(FRIDAY);
        assertThat(shop.sent).as("told once an evening").hasSize(1);
    }

    @Test
    void old_rules_of_summer_time_alone_wait_for_the_day_of_the_weekly_mail() {
        String note = new SelfTest(shop.office()).run(FRIDAY);

        if (note.contains("summer time")) assertThat(shop.sent).isEmpty();
        else assertThat(note).isEqualTo("all is well for the night");
    }

    @ParameterizedTest
    @CsvSource({
        "2025a, 2026-06-01, false",
        "2025a, 2026-07-02, true",
        "2025b, 2026-09-01, false",
        "2025b, 2026-12-03, true",
        "2026c, 2026-12-03, false",
        "TZDB.dat, 2040-01-01, false"
    })
    void rules_are_old_a_year_and_a_half_after_they_were_published(String version, LocalDate today, boolean old) {
        assertThat(SelfTestOfLedger.isOld(version, today)).isEqualTo(old);
    }

    @Test
    void too_little_room_is_said_in_megabytes() {
        shop.wantedFree = 999_000_000_000_000L;

        assertThat(wrong()).extracting(SelfTest.Finding::what).contains("room on the disk", "ballast");
        assertThat(wrong().get(0).said()).matches("the disk has \\d+ MB left, and should have 999000000");
    }

    @Test
    void a_clock_that_nobody_vouches_for_is_said() {
        shop.clockDoubt = Optional.of("the clock has not been set from the network since the start");

        assertThat(only()).isEqualTo("clock: the clock has not been set from the network since the start");
    }

    @Test
    void last_nights_copy_is_opened_and_its_checksum_looked_at() throws IOException {
        backUpLastNight();
        assertThat(wrong()).isEmpty();

        Path copy = state.resolve("backups/ledger-2026-12-03.db");
        byte[] bytes = Files.readAllBytes(copy);
        bytes[bytes.length - 100] ^= 4;
        Files.write(copy, bytes);

        assertThat(only())
                .isEqualTo("last copy: ledger-2026-12-03.db is not sound: "
                        + "its bytes are not those that were written: the checksum differs");
    }

    @Test
    void a_copy_that_is_of_an_earlier_night_or_missing_is_said() throws IOException {
        backUpLastNight();
        LedgerCopy copy = new LedgerCopy(state.resolve("backups/ledger-2026-12-03.db"));
        copy.movedTo(state.resolve("backups/ledger-2026-12-02.db"));
        assertThat(only())
                .isEqualTo("last copy: the newest copy is ledger-2026-12-02.db, and there should be one of 2026-12-03");

        Files.delete(state.resolve("backups/ledger-2026-12-02.db"));
        assertThat(only()).isEqualTo("last copy: there is no copy of the ledger");
    }

    @Test
    void a_stick_that_was_pulled_out_is_said() {
        backUpLastNight();
        shop.second = Optional.of(state.resolve("stick"));

        assertThat(only())
                .startsWith("second copy: the folder for second copies")
                .endsWith("is not there");
    }

    @Test
    void it_is_due_in_the_evening_before_the_production_day() {
        assertThat(shop.office().timetable().slots(FRIDAY))
                .filteredOn(slot -> slot.step() == Step.SELF_TEST)
                .extracting(Timetable.Slot::due)
                .containsExactly(EVENING);
    }

    @Test
    void a_clock_that_was_vouched_for_is_noted_once() {
        shop.clockDoubt = Optional.of("nobody vouches");
        new ClockGate(shop.office()).confirm(THURSDAY);

        assertThat(wrong()).isEmpty();
        assertThat(shop.ledger.clock().last(ClockRows.Kind.CONFIRMED)).isPresent();
    }
}
