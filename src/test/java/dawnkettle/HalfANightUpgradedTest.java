package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.label.Confirmed;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelRun;
import dawnkettle.measure.Celsius;
import dawnkettle.night.BrokenRuns;
import dawnkettle.night.Edges;
import dawnkettle.night.Night;
import dawnkettle.night.Office;
import dawnkettle.night.Step;
import dawnkettle.plan.Temperatures;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerCopy;
import dawnkettle.store.OlderLedger;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** An upgrade in the midst of a night: the ledger of an older version comes up, a copy of it stays, the night goes on. */
class HalfANightUpgradedTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final ZoneId ZONE = FewOrders.SHOP.house().zone();

    @TempDir
    Path folder;

    private final MovedClock clock = new MovedClock(at(6, 0), ZONE);
    private final FewOrders.WordsOnly drawing = new FewOrders.WordsOnly();
    private final List<Sheet> sheets = new ArrayList<>();
    private final List<String> labelled = new ArrayList<>();
    private boolean isPrinterOff;
    private Office office;
    private Night night;

    private static Instant at(int hour, int minute) {
        return FewOrders.at(DAY, hour, minute);
    }

    private void start(Ledger ledger) {
        Edges edges = new Edges(
                new Edges.Senses(
                        at -> List.of(),
                        at -> new Temperatures(Celsius.degrees(8), Celsius.degrees(9), "set by hand"),
                        at -> Optional.empty()),
                new Edges.PaperDesk(this::print, FewOrders.STYLE),
                new Edges.LabelDesk(this::print, FewOrders.lots(drawing)),
                new Edges.MailDesk((mail, date) -> {}, FewOrders.CHARTS, sheet -> new byte[] {1}),
                FewOrders.FORM);
        office = new Office(FewOrders.papers(folder), ledger, clock, edges, (at, line) -> {});
        new BrokenRuns(office).interrupted();
        ledger.outbox().interrupted(clock.instant());
        night = new Night(
                office,
                slot -> slot.businessDate().equals(DAY)
                        && slot.step() != Step.COSTS
                        && slot.step() != Step.RECALL_DRILL);
    }

    private void print(Sheet sheet) {
        if (isPrinterOff && sheet.name().equals("pick")) throw DeviceAway.clean("the office printer is off", null);
        sheets.add(sheet);
    }

    private void print(LabelRun run, LabelJournal journal) {
        Confirmed all = new Confirmed(run.lot(), run.product(), run.first(), run.last());
        journal.intended(all);
        labelled.add(run.lot() + " " + run.product());
        journal.confirmed(all);
    }

    private void tickAt(int hour, int minute) {
        clock.moveTo(at(hour, minute));
        night.tick();
    }

    /** Of version 11: before what hands and stations brought; of 12: before a date could be in doubt. */
    @ParameterizedTest
    @ValueSource(ints = {11, 12, 13})
    void a_night_that_an_older_version_began_is_finished_by_this_one_and_a_copy_of_it_stays(int version)
            throws Exception {
        Path today = folder.resolve("today.db");
        try (Ledger ledger = Ledger.open(today)) {
            start(ledger);
            tickAt(6, 0);
            tickAt(14, 0);
            isPrinterOff = true;
            tickAt(15, 0);
            ledger.checkpoint();
        }
        List<String> printed = sheets.stream().map(Sheet::name).toList();
        assertThat(printed).contains("run").doesNotContain("pick");
        Path older = folder.resolve("ledger.db");
        OlderLedger.write(today, older, version);
        assertThat(OlderLedger.version(older)).isEqualTo(version);

        isPrinterOff = false;
        try (Ledger ledger = Ledger.open(older)) {
            start(ledger);
            tickAt(15, 10);
            for (int hour = 16; hour < 36; hour++) tickAt(hour, 0);

            assertThat(ledger.version()).isGreaterThan(12);
            assertThat(ledger.broken(DAY)).isEmpty();
            for (Step step : List.of(
                    Step.SOAK_CALL, Step.CLOSE, Step.PLAN, Step.SHEETS, Step.DAWN_CHECK, Step.LABELS, Step.SUMMARY))
                assertThat(ledger.steps().find(StepKey.of(step.word(), DAY)).map(StepRow::state))
                        .as(step.word())
                        .contains(StepRow.State.DONE);
            assertThat(labelled).isNotEmpty().doesNotHaveDuplicates();
        }
        assertThat(sheets).extracting(Sheet::name).contains("pick").doesNotHaveDuplicates();
        Path kept = folder.resolve("ledger.db-of-version-" + version);
        assertThat(OlderLedger.version(kept)).isEqualTo(version);
        assertThat(new LedgerCopy(kept).checked().isSound()).isTrue();
        assertThat(Files.exists(folder.resolve("ledger.db-of-version-" + version + ".part")))
                .isFalse();
    }

    @Test
    void a_program_that_is_older_than_the_ledger_is_refused_in_words_and_changes_nothing() throws Exception {
        Path file = folder.resolve("ledger.db");
        Ledger.open(file).close();
        int known = OlderLedger.version(file);
        OlderLedger.stamp(file, known + 1);

        assertThatThrownBy(() -> Ledger.open(file))
                .isInstanceOf(DeviceAway.class)
                .hasMessage("ledger " + file + ": it was written by a newer version (" + (known + 1)
                        + ", this one knows " + known + "); install that version again");
        assertThat(OlderLedger.version(file)).isEqualTo(known + 1);
    }
}
