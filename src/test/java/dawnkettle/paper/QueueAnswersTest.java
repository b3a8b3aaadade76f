package dawnkettle.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.net.URI;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** How the office printers are, asked in the evening. */
class QueueAnswersTest {
    private ScriptedPrinter office;
    private ScriptedPrinter cold;

    @BeforeEach
    void switchOn() throws IOException {
        office = new ScriptedPrinter();
        cold = new ScriptedPrinter();
    }

    @AfterEach
    void switchOff() {
        office.close();
        cold.close();
    }

    private PrintQueues queues() {
        Map<String, URI> byKind = Map.of("pick", cold.address());
        return new PrintQueues(
                new PaperSettings(Optional.of(office.address()), byKind, Map.of(), Map.of(), Duration.ofSeconds(2)),
                null);
    }

    @Test
    void each_is_asked_and_nothing_is_printed() {
        assertThat(queues().answers()).isEqualTo("answers");
        assertThat(office.operations(IppRequest.GET_PRINTER_ATTRIBUTES)).isEqualTo(1);
        assertThat(cold.operations(IppRequest.GET_PRINTER_ATTRIBUTES)).isEqualTo(1);
    }

    @Test
    void one_that_stands_still_says_why() {
        cold.printerState = 5;
        cold.reason = "media-empty-error";

        assertThatThrownBy(() -> queues().answers())
                .isInstanceOf(DeviceAway.class)
                .hasMessageContaining("stands still (the printer says media-empty");
    }

    @Test
    void one_that_is_switched_off_does_not_answer() {
        PrintQueues queues = queues();
        office.close();

        assertThatThrownBy(queues::answers)
                .isInstanceOf(DeviceAway.class)
                .hasMessageContaining("does not answer; switch the printer on, look at its cable");
    }
}
