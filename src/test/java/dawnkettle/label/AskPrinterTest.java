package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.trouble.DeviceAway;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How a label printer is, asked in the evening. */
class AskPrinterTest {
    @ParameterizedTest
    @ValueSource(strings = {"rows-behind-escape", "text-with-hex-runs", "text-with-deflated-dots", "line-words"})
    void a_printer_that_is_well_says_so_and_prints_nothing(String profile) {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile(profile));

        assertThat(new AskPrinter(SampleProfiles.profile(profile), new FakeLine(printer)).answer())
                .isEqualTo("is ready");
        assertThat(printer.printed()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"rows-behind-escape", "text-with-hex-runs", "text-with-deflated-dots", "line-words"})
    void one_without_labels_says_what_to_do(String profile) {
        FakeLine line = new FakeLine(new FakePrinter(SampleProfiles.profile(profile)).roll(0));

        assertThatThrownBy(() -> new AskPrinter(SampleProfiles.profile(profile), line).answer())
                .isInstanceOf(DeviceAway.class)
                .hasMessage("label printer on /dev/fake is out of labels; put in labels");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rows-behind-escape", "line-words"})
    void one_that_is_switched_off_is_waited_for_some_seconds_and_no_longer(String profile) {
        FakeLine line = new FakeLine(new FakePrinter(SampleProfiles.profile(profile))).answers(bytes -> new byte[0]);

        assertThatThrownBy(() -> new AskPrinter(SampleProfiles.profile(profile), line).answer())
                .isInstanceOf(DeviceAway.class)
                .hasMessage("label printer on /dev/fake does not answer; switch it on and look at its cable");
        assertThat(line.elapsedMillis()).isBetween(5_000L, 8_000L);
    }
}
