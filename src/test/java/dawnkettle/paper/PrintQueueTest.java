package dawnkettle.paper;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.sheet.Imprint;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.PaperSize;
import dawnkettle.sheet.Sheet;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class PrintQueueTest {
    static final Sheet SOAK = new Sheet(
            Sheet.Kind.SOAK,
            "soak",
            new Imprint("Soak sheet, Friday 4 December 2026", "en", PaperSize.A4, Instant.EPOCH),
            List.of(new Page(List.of(), List.of(), List.of())));

    private ScriptedPrinter printer;

    @BeforeEach
    void switchOn() throws IOException {
        printer = new ScriptedPrinter();
    }

    @AfterEach
    void switchOff() {
        printer.close();
    }

    private PrintQueue queue(URI address, Map<String, Integer> copies) {
        PaperSettings settings =
                new PaperSettings(Optional.of(address), Map.of(), copies, Map.of(), Duration.ofMillis(700));
        return new PrintQueue(address, settings, sheet -> "%PDF-bytes".getBytes(ISO_8859_1));
    }

    private DeviceAway refusal() {
        try {
            queue(printer.address(), Map.of()).print(SOAK);
            throw new AssertionError("it was printed");
        } catch (DeviceAway e) {
            return e;
        }
    }

    @Test
    void a_sheet_is_out_when_its_job_is_completed() {
        printer.states.clear();
        printer.states.addAll(List.of(3, 5, 5, 9));
        queue(printer.address(), Map.of()).print(SOAK);
        assertThat(printer.operations(0x0002)).isEqualTo(1);
        assertThat(printer.operations(0x0009)).isEqualTo(4);
        assertThat(printer.operations(0x0008)).isZero();
    }

    @Test
    void the_job_is_what_rfc_8010_says_a_job_is() {
        queue(printer.address(), Map.of("soak", 2)).print(SOAK);
        byte[] job = printer.last(0x0002);
        // RFC 8010, 3.1: version, operation 0x0002 Print-Job, request-id, then the operation attributes tag.
        assertThat(java.util.Arrays.copyOf(job, 9)).containsExactly(1, 1, 0, 2, 0, 0, 0, 1, 1);
        String text = new String(job, ISO_8859_1);
        // RFC 8011, 4.1.4: charset first, language second, then the target.
        assertThat(text)
                .containsSubsequence("attributes-charset", "utf-8", "attributes-natural-language", "en", "printer-uri");
        assertThat(text).contains("document-format\0\17application/pdf");
        assertThat(text).contains("job-name\0\62Soak sheet, Friday 4 December 2026, soak #");
        assertThat(text).endsWith("\2\41\0\6copies\0\4\0\0\0\2\3%PDF-bytes");
    }

    @Test
    void a_kind_of_which_no_copies_are_wanted_is_not_printed() {
        queue(printer.address(), Map.of("soak", 0)).print(SOAK);
        assertThat(printer.asked).isEmpty();
    }

    @Test
    void a_printer_that_is_off_has_printed_nothing() {
        printer.close();
        assertThat(refusal().isAmbiguous()).isFalse();
        assertThat(refusal()).hasMessageContaining("switch the printer on or look at the queue");
    }

    @Test
    void a_refusal_is_told_with_its_status() {
        printer.printStatus = 0x0506; // RFC 8011: server-error-not-accepting-jobs
        DeviceAway away = refusal();
        assertThat(away.isAmbiguous()).isFalse();
        assertThat(away)
                .hasMessage(
                        "print queue ipp://localhost/ipp/print, sheet \"soak\": refused it with status 0x0506 not today;"
                                + " look at the queue's settings");
    }

    @Test
    void http_that_forbids_has_printed_nothing() {
        printer.httpStatus = 403;
        assertThat(refusal().isAmbiguous()).isFalse();
    }

    @Test
    void http_that_fails_may_have_printed() {
        printer.httpStatus = 500;
        assertThat(refusal().isAmbiguous()).isTrue();
    }

    @Test
    void a_printer_that_hangs_up_after_taking_the_sheet_may_have_printed_it() {
        printer.hangsUpOnPrint = true;
        DeviceAway away = refusal();
        assertThat(away.isAmbiguous()).isTrue();
        assertThat(away).hasMessageContaining("look in the tray before it is printed again");
    }

    @Test
    void half_an_answer_is_no_answer() {
        printer.cutsAnswerShort = true;
        assertThat(refusal().isAmbiguous()).isTrue();
    }

    @Test
    void a_job_that_only_waits_is_taken_back_and_nothing_came_out() {
        printer.states.clear();
        printer.states.add(3);
        DeviceAway away = refusal();
        assertThat(away.isAmbiguous()).isFalse();
        assertThat(away)
                .hasMessageContaining("was still waiting after 0 s", "the job was taken back, nothing came out");
        assertThat(printer.operations(0x0008)).isEqualTo(1);
    }

    @Test
    void an_empty_tray_is_told_by_the_printers_reasons_and_the_job_is_taken_back() {
        printer.states.clear();
        printer.states.add(5);
        printer.reason = "media-empty-warning";
        DeviceAway away = refusal();
        assertThat(away.isAmbiguous()).isTrue();
        assertThat(away).hasMessageContaining("the printer says media-empty, media-needed");
        assertThat(printer.operations(0x0008)).isEqualTo(1);
    }

    @Test
    void a_job_that_cannot_be_taken_back_says_so() {
        printer.states.clear();
        printer.states.add(6);
        printer.cancelStatus = 0x0404; // RFC 8011: client-error-not-possible
        assertThat(refusal()).hasMessageContaining("the job could not be taken back, cancel it at the queue");
    }

    @Test
    void an_aborted_job_may_lie_half_in_the_tray() {
        printer.states.clear();
        printer.states.add(8);
        DeviceAway away = refusal();
        assertThat(away.isAmbiguous()).isTrue();
        assertThat(away).hasMessageContaining("ended the job as aborted");
    }

    @Test
    void a_password_in_the_address_is_never_shown() {
        printer.printStatus = 0x0400;
        URI secret = URI.create(printer.address().toString().replace("localhost", "clerk:sesame@localhost"));
        assertThatThrownBy(() -> queue(secret, Map.of()).print(SOAK))
                .isInstanceOf(DeviceAway.class)
                .hasMessageNotContaining("sesame");
    }
}
