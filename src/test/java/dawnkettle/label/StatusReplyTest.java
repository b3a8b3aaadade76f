package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;

class StatusReplyTest {
    private static final StatusReply ROWS =
            SampleProfiles.profile("rows-behind-escape").asking().reply();
    private static final StatusReply LINES =
            SampleProfiles.profile("text-with-hex-runs").asking().reply();

    // A public test suite gives 1A, 32, 7E as off line, labels at their end, and near it (read).
    @Test
    void the_published_answer_is_off_line_and_out_of_labels() {
        assertThat(ROWS.read(new byte[] {0x1A, 0x32, 0x7E}))
                .contains(new PrinterState(
                        Set.of(Condition.OFFLINE, Condition.PAPER_OUT, Condition.PAPER_LOW), OptionalInt.empty()));
    }

    @Test
    void a_healthy_answer_has_only_its_fixed_bits() {
        assertThat(ROWS.read(new byte[] {0x12, 0x12, 0x12})).contains(new PrinterState(Set.of(), OptionalInt.empty()));
    }

    // By arithmetic: 11 and 13, the bytes of software flow control, fail (b & 93) = 12.
    @Test
    void flow_control_and_noise_are_no_answer() {
        assertThat(ROWS.read(new byte[] {0x11, 0x12, 0x12})).isEmpty();
        assertThat(ROWS.read(new byte[] {0x12, 0x13, 0x12})).isEmpty();
        assertThat(ROWS.read(new byte[] {0x12, 0x12})).isEmpty();
        assertThat(ROWS.read(new byte[] {0x55, 0x12, 0x12, 0x12})).isPresent();
    }

    @Test
    void fields_are_counted_over_all_lines() {
        String answer = "\u0002030,1,0,0560,000,0,0,0,000,0,0,0\u0003\r\n"
                + "\u0002000,0,0,0,0,2,4,0,00000007,1,000\u0003\r\n"
                + "\u00020000,0\u0003\r\n";
        assertThat(LINES.read(answer.getBytes(StandardCharsets.US_ASCII)))
                .contains(new PrinterState(Set.of(Condition.PAPER_OUT), OptionalInt.of(7)));
        assertThat(LINES.read(answer.substring(0, 60).getBytes(StandardCharsets.US_ASCII)))
                .isEmpty();
        assertThat(LINES.read(answer.replace("00000007", "0000x007").getBytes(StandardCharsets.US_ASCII)))
                .isEmpty();
    }

    @Test
    void the_most_telling_stop_is_named_and_low_labels_are_none() {
        assertThat(new PrinterState(Set.of(Condition.OFFLINE, Condition.PAPER_OUT), OptionalInt.empty()).stop())
                .contains(Condition.PAPER_OUT);
        assertThat(new PrinterState(Set.of(Condition.PAPER_LOW), OptionalInt.empty()).stop())
                .isEmpty();
    }
}
