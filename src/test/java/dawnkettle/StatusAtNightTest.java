package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.command.StatusPage;
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
import dawnkettle.store.RestoredRows;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a tired person reads who asks how the night stands. */
class StatusAtNightTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final ZoneId ZONE = FewOrders.SHOP.house().zone();

    @TempDir
    Path folder;

    private final MovedClock clock = new MovedClock(at(6, 0), ZONE);
    private final FewOrders.WordsOnly drawing = new FewOrders.WordsOnly();
    private boolean isPrinterOff;
    private boolean isSilent;
    private Optional<String> clockDoubt = Optional.empty();
    private Ledger ledger;
    private Office office;
    private Night night;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        Edges edges = new Edges(
                new Edges.Senses(
                        at -> List.of(),
                        at -> new Temperatures(Celsius.degrees(8), Celsius.degrees(9), "set by hand"),
                        at -> clockDoubt),
                new Edges.PaperDesk(this::print, FewOrders.STYLE),
                new Edges.LabelDesk(this::print, FewOrders.lots(drawing)),
                new Edges.MailDesk((mail, date) -> {}, FewOrders.CHARTS, sheet -> new byte[] {1}),
                FewOrders.FORM);
        office = new Office(FewOrders.papers(folder), ledger, clock, edges, (at, line) -> {});
        night = new Night(
                office,
                slot -> slot.businessDate().equals(DAY)
                        && slot.step() != Step.COSTS
                        && slot.step() != Step.RECALL_DRILL);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void print(Sheet sheet) {
        if (isPrinterOff && sheet.name().equals("run")) throw DeviceAway.clean("the office printer is off", null);
    }

    private void print(LabelRun run, LabelJournal journal) {
        Confirmed all = new Confirmed(run.lot(), run.product(), run.first(), run.last());
        if (run.labels().stream().noneMatch(one -> one.isCounted())) return;
        journal.intended(all);
        if (isSilent) {
            journal.doubtful(all);
            throw DeviceAway.ambiguous("the label printer has not answered", null);
        }
        journal.confirmed(all);
    }

    private static Instant at(int hour, int minute) {
        return FewOrders.at(DAY, hour, minute);
    }

    private void tickAt(int hour, int minute) {
        clock.moveTo(at(hour, minute));
        night.tick();
    }

    private String status() {
        StatusPage page = new StatusPage(office);
        String said = String.join("\n", page.lines());
        assertThat(page.isWell()).isEqualTo(said.startsWith("All is well."));
        return said;
    }

    @Test
    void a_quiet_night() {
        tickAt(6, 0);
        tickAt(14, 0);
        tickAt(15, 0);

        assertThat(status())
                .startsWith("All is well.\nMaking of Friday 4 December:\n  soak call: done 06:00, ")
                .contains("\n  close: done 15:00, ", "\n  plan: done 15:00, ", "\n  sheets: done 15:00, ")
                .endsWith("\nNext, by itself: Thu 3 Dec 23:30 backup of 2026-12-04.")
                .doesNotContain("in doubt", "in the way");
    }

    @Test
    void half_a_night_with_the_printer_off() {
        tickAt(14, 0);
        isPrinterOff = true;
        tickAt(15, 0);

        assertThat(status())
                .startsWith("Look at this: sheets failed.\n")
                .contains("\n  sheets: failed 15:00, after 1 try, the office printer is off\n")
                .endsWith("\nNext, by itself: Thu 3 Dec 15:01 sheets of 2026-12-04 once more, for it failed.");
    }

    @Test
    void labels_in_doubt() {
        tickAt(6, 0);
        tickAt(14, 0);
        tickAt(15, 0);
        isSilent = true;
        for (int hour = 26; hour < 34; hour++) tickAt(hour, 0);

        assertThat(new BrokenRuns(office).open()).isNotEmpty();
        assertThat(status())
                .startsWith("Look at this: ")
                .contains(" of labels to count.\n")
                .containsPattern(
                        "\n  in doubt: lot 261204-[A-Z0-9]+ [A-Z0-9-]+: no label is certain, look at 1 to \\d+, ");
    }

    @Test
    void a_clock_in_doubt() {
        clockDoubt = Optional.of("the clock has not been set from the network since the start");
        tickAt(14, 0);
        tickAt(15, 0);
        tickAt(15, 1);

        assertThat(status()).isEqualTo("""
                        Look at this: the clock is not trusted.
                        Making of Friday 4 December:
                          date not confirmed: what hangs of this day says so; it becomes the day's plan once the clock is trusted, and comes again without those words
                          in the way: The clock is not trusted: the clock has not been set from the network since the start
                        Next, by itself: sheets as they fall due, marked DATE NOT CONFIRMED. Book, labels and the rest wait for you: if today is Thursday 3 December, say dawnkettle clock confirm 2026-12-03""");
    }

    @Test
    void after_the_ledger_was_put_back() {
        tickAt(14, 0);
        tickAt(15, 0);
        clock.moveTo(at(26, 0));
        ledger.restored()
                .note(new RestoredRows.Restored(
                        clock.instant(), "ledger-2026-12-03.db", at(23, 0).minus(Duration.ofDays(1)), true, List.of()));

        assertThat(status())
                .startsWith("All is well.\n")
                .contains(
                        "\nThe ledger was put back Fri 4 Dec 02:00 from the copy of Wed 2 Dec 23:00: what was ordered, written"
                                + " down or printed between the two is not in it. Labels of that time never come by themselves; drop"
                                + " the orders again, write down again what was weighed.\n")
                .contains("\nNext, by itself: Fri 4 Dec ");
    }
}
