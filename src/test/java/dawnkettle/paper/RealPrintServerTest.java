package dawnkettle.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dawnkettle.draw.PdfSheets;
import dawnkettle.draw.PdfTypeface;
import dawnkettle.sheet.Imprint;
import dawnkettle.sheet.Lettering;
import dawnkettle.sheet.Mark;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.PaperSize;
import dawnkettle.sheet.Sheet;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sheets through a print server and a network printer that we did not write. */
class RealPrintServerTest {
    private static final PdfSheets DRAWING = new PdfSheets(PdfTypeface.notoSans());

    @TempDir
    private static Path folder;

    private static PrintServer server;

    @BeforeAll
    static void start() throws IOException {
        assumeTrue(
                PrintServer.isInstalled(),
                "needs root and Debian's cups, cups-client, cups-ipp-utils, dbus-daemon and avahi-daemon");
        assumeTrue(!PrintServer.isResponderTaken(), "another DNS-SD responder runs on this machine");
        server = new PrintServer(folder);
        server.start();
    }

    @AfterAll
    static void stop() {
        if (server != null) server.close();
    }

    @BeforeEach
    void wellAgain() throws IOException {
        server.queueIs(true);
        server.trays(true);
    }

    private static Sheet sheet(String title) {
        Page page = new Page(
                List.of(), List.of(new Mark.Text(20, 30, Lettering.bold(20), title + ", 12.5 kg at 5 °C")), List.of());
        return new Sheet(
                Sheet.Kind.ROUTE,
                "route-R1",
                new Imprint(title, "en", PaperSize.A4, Instant.parse("2026-12-03T20:00:00Z")),
                List.of(page, page, page));
    }

    private static PrintQueues queue(URI address, Duration patience) {
        return new PrintQueues(
                new PaperSettings(
                        Optional.of(address),
                        Map.of(),
                        Map.of("route", 2),
                        Map.of("route", PaperSettings.Sides.TWO),
                        patience),
                DRAWING);
    }

    private static DeviceAway refusal(PrintQueues queue, String title) {
        return catchThrowableOfType(DeviceAway.class, () -> queue.print(sheet(title)));
    }

    @Test
    void a_sheet_goes_through_the_queue_to_the_printer_whole_with_its_copies_and_sides() throws IOException {
        queue(server.queue(), Duration.ofSeconds(30)).print(sheet("Route sheet, through"));
        List<Path> out = server.documents("through");
        assertThat(out).hasSize(1);
        assertThat(out.get(0)).hasBinaryContent(DRAWING.draw(sheet("Route sheet, through")));
        assertThat(server.jobs("completed"))
                .containsPattern("job-name .*= Route sheet, through, route-R1 #[0-9a-f]{8}")
                .contains("copies (integer) = 2", "sides (keyword) = two-sided-long-edge");
    }

    @Test
    void a_stopped_queue_is_told_the_job_taken_back_and_the_next_try_prints_once() throws IOException {
        server.queueIs(false);
        DeviceAway away = refusal(queue(server.queue(), Duration.ofSeconds(2)), "Route sheet, stopped");
        assertThat(away.isAmbiguous()).isFalse();
        assertThat(away)
                .hasMessage(
                        "print queue ipp://localhost/printers/office, sheet \"route-R1\": was still waiting after 2 s"
                                + " (the printer says paused); the job was taken back, nothing came out");
        assertThat(server.jobs("not-completed")).doesNotContain("Route sheet, stopped");
        server.queueIs(true);
        queue(server.queue(), Duration.ofSeconds(30)).print(sheet("Route sheet, stopped"));
        assertThat(server.documents("stopped")).hasSize(1);
    }

    @Test
    void a_printer_that_is_off_behind_its_queue_leaves_no_job_that_would_come_out_later() throws IOException {
        server.switchPrinterOff();
        try {
            DeviceAway away = refusal(queue(server.queue(), Duration.ofSeconds(3)), "Route sheet, off");
            assertThat(away).hasMessageContaining("was still").hasMessageContaining("the job was taken back");
            assertThat(server.jobs("not-completed")).doesNotContain("Route sheet, off");
            assertThat(refusal(queue(server.printer(), Duration.ofSeconds(3)), "Route sheet, off"))
                    .hasMessageContaining("switch the printer on or look at the queue");
        } finally {
            server.startPrinter();
        }
    }

    @Test
    void an_empty_tray_is_told_in_the_printers_words_and_when_it_is_filled_the_sheet_comes() throws IOException {
        server.trays(false);
        DeviceAway away = refusal(queue(server.printer(), Duration.ofSeconds(3)), "Route sheet, empty");
        assertThat(away.isAmbiguous()).isTrue();
        assertThat(away)
                .hasMessageContaining("was still printing after 3 s (the printer says media-empty, media-needed)")
                .hasMessageContaining("look in the tray before it is printed again");
        server.trays(true);
        // Until it has let go of the job that was taken back, it refuses the next, as it would in the night.
        PrintServer.await(() -> refusal(queue(server.printer(), Duration.ofSeconds(20)), "Route sheet, empty") == null);
    }
}
