package dawnkettle.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.paper.ScriptedPrinter.Waiting;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What an earlier try left in a queue would come out later, with yesterday's numbers. */
class QueueGhostsTest {
    private static final String SOAK = "Soak sheet, Friday 4 December 2026, soak #";

    private ScriptedPrinter printer;

    @BeforeEach
    void switchOn() throws IOException {
        printer = new ScriptedPrinter();
    }

    @AfterEach
    void switchOff() {
        printer.close();
    }

    private void print() {
        new PrintQueues(
                        new PaperSettings(
                                Optional.of(printer.address()), Map.of(), Map.of(), Map.of(), Duration.ofMillis(600)),
                        sheet -> "%PDF-bytes".getBytes(StandardCharsets.US_ASCII))
                .print(PrintQueueTest.SOAK);
    }

    @Test
    void an_earlier_try_of_the_same_sheet_is_taken_back_first() {
        printer.waiting.add(new Waiting(12, SOAK + "0badcafe", 1));
        print();
        assertThat(printer.cancelled()).containsExactly(12);
        // Cancel-Job before Print-Job.
        assertThat(printer.asked.get(1)[3]).isEqualTo((byte) 0x08);
        assertThat(printer.asked.get(2)[3]).isEqualTo((byte) 0x02);
    }

    @Test
    void any_sheet_of_ours_that_nobody_follows_any_more_is_taken_back() {
        printer.waiting.add(new Waiting(13, "Pick sheet, Thursday 3 December 2026, pick #01234567", 90_000));
        print();
        assertThat(printer.cancelled()).containsExactly(13);
    }

    @Test
    void what_others_print_and_what_is_still_followed_stays() {
        printer.waiting.add(new Waiting(14, "letter to the landlord", 90_000));
        printer.waiting.add(new Waiting(15, "Pick sheet, Friday 4 December 2026, pick #01234567", 1));
        print();
        assertThat(printer.cancelled()).isEmpty();
    }

    @Test
    void a_job_whose_number_was_lost_is_found_by_its_name_and_followed_to_its_end() {
        printer.hangsUpOnPrint = true;
        printer.keepsWhatItHungUpOn = true;
        print();
        assertThat(printer.operations(0x0002)).isEqualTo(1);
        assertThat(printer.operations(0x0009)).isEqualTo(1);
    }

    @Test
    void a_job_whose_number_was_lost_and_that_is_not_found_may_have_come_out() {
        printer.hangsUpOnPrint = true;
        assertThatThrownBy(this::print)
                .hasMessage("print queue ipp://localhost/ipp/print, sheet \"soak\":"
                        + " broke off while taking it; look in the tray before it is printed again");
    }
}
