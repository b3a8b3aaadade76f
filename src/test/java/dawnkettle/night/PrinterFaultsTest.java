package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import dawnkettle.paper.PaperSettings;
import dawnkettle.paper.PrintQueues;
import dawnkettle.paper.ScriptedPrinter;
import dawnkettle.sheet.Imprint;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.PaperSize;
import dawnkettle.sheet.Printer;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Effect;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each way in which a printer can fail, from its bytes to what the ledger holds and what is said. */
class PrinterFaultsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final Instant NOW = Instant.parse("2026-12-03T20:00:00Z");
    private static final Page PAGE = new Page(List.of(), List.of(), List.of());
    private static final Sheet PICK = new Sheet(
            Sheet.Kind.PICK,
            "pick",
            new Imprint("Pick sheet, Friday 4 December 2026", "en", PaperSize.A4, NOW),
            List.of(PAGE, PAGE, PAGE));
    private static final String AGAIN = "; look in the tray before it is printed again";

    @TempDir
    Path folder;

    private Ledger ledger;
    private ScriptedPrinter printer;

    @BeforeEach
    void open() throws IOException {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        printer = new ScriptedPrinter();
    }

    @AfterEach
    void close() {
        printer.close();
        ledger.close();
    }

    /** What is said after {@code print queue …, sheet "pick":}; nothing where it came out. */
    private String print() {
        Printer queue = new PrintQueues(
                new PaperSettings(Optional.of(printer.address()), Map.of(), Map.of(), Map.of(), Duration.ofMillis(500)),
                sheet -> sheet.asText().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        Edges edges = new Edges(null, new Edges.PaperDesk(queue, null), null, null, null);
        Office office = new Office(null, ledger, Clock.fixed(NOW, ZoneOffset.UTC), edges, (at, line) -> {});
        Throwable thrown =
                catchThrowable(() -> new SheetEffects(office).print("2026-12-04 revision 1", DAY, List.of(PICK)));
        if (thrown == null) return "";
        assertThat(thrown.getMessage()).startsWith("print queue ipp://localhost/ipp/print, sheet \"pick\": ");
        assertThat(journal().note()).isEqualTo(thrown.getMessage());
        return thrown.getMessage().substring("print queue ipp://localhost/ipp/print, sheet \"pick\": ".length());
    }

    private Effect journal() {
        return ledger.effects().find("sheet 2026-12-04 revision 1 pick").orElseThrow();
    }

    private void states(Integer... states) {
        printer.states.clear();
        printer.states.addAll(List.of(states));
    }

    @Test
    void off_it_has_printed_nothing_and_is_tried_again_unmarked() {
        printer.close();
        assertThat(print()).matches("does not take it \\(.+\\); switch the printer on or look at the queue");
        assertThat(journal().state()).isEqualTo(Effect.State.FAILED);
    }

    @Test
    void refusing_it_has_printed_nothing() {
        printer.printStatus = 0x0506; // RFC 8011: server-error-not-accepting-jobs
        assertThat(print()).isEqualTo("refused it with status 0x0506 not today; look at the queue's settings");
        assertThat(journal().state()).isEqualTo(Effect.State.FAILED);
    }

    @Test
    void with_a_stopped_queue_the_job_waits_and_is_taken_back() {
        states(3);
        printer.printerState = 5;
        printer.reason = "paused";
        assertThat(print())
                .isEqualTo(
                        "was still waiting after 0 s (the printer says paused); the job was taken back, nothing came out");
        assertThat(journal().state()).isEqualTo(Effect.State.FAILED);
    }

    @Test
    void with_an_empty_tray_the_job_hangs_and_is_taken_back_but_a_page_may_be_out() {
        states(5);
        printer.reason = "media-empty-warning";
        assertThat(print())
                .isEqualTo("was still printing after 0 s (the printer says media-empty, media-needed);"
                        + " the job was taken back" + AGAIN);
        assertThat(journal().state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void a_tray_that_is_filled_in_time_is_no_fault() {
        states(5, 5, 5, 9);
        assertThat(print()).isEmpty();
        assertThat(journal().state()).isEqualTo(Effect.State.DONE);
    }

    @Test
    void completed_while_the_printer_stands_still_is_not_believed() {
        printer.printerState = 5;
        printer.reason = "media-jam-error";
        assertThat(print())
                .isEqualTo(
                        "says completed, but nothing can have come out for 0 s (the printer says media-jam)" + AGAIN);
        assertThat(journal().state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void completed_with_every_page_counted_is_believed_though_the_last_page_emptied_the_tray() {
        printer.printerState = 5;
        printer.reason = "media-empty-error";
        printer.impressions = 3;
        assertThat(print()).isEmpty();
        assertThat(journal().state()).isEqualTo(Effect.State.DONE);
    }

    @Test
    void completed_with_a_page_too_few_is_not_believed() {
        printer.impressions = 2;
        assertThat(print()).isEqualTo("says completed, but counts 2 of 3 pages" + AGAIN);
        assertThat(journal().state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void a_queue_that_counts_documents_instead_of_pages_is_believed() {
        printer.impressions = 1;
        assertThat(print()).isEmpty();
        assertThat(journal().state()).isEqualTo(Effect.State.DONE);
    }

    @Test
    void dying_after_it_took_the_sheet_leaves_it_open() {
        printer.diesAfterTaking = true;
        assertThat(print())
                .isEqualTo("was still unknown after 0 s (the printer no longer answers);"
                        + " the job could not be taken back, cancel it at the queue" + AGAIN);
        assertThat(journal().state()).isEqualTo(Effect.State.AMBIGUOUS);
    }

    @Test
    void what_may_be_out_is_printed_once_more_marked_and_then_no_more() {
        states(5);
        print();
        print();
        print();
        assertThat(printer.operations(0x0002)).isEqualTo(2);
        assertThat(new String(printer.last(0x0002), java.nio.charset.StandardCharsets.UTF_8))
                .contains("May have been printed before: keep one, bin the other.");
    }
}
