package dawnkettle.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SynchronizedClockTest {
    private static final Instant NOW = Instant.parse("2026-12-04T07:30:00Z");

    @TempDir
    Path folder;

    @Test
    void a_clock_set_from_the_network_is_trusted() throws Exception {
        assertThat(new SynchronizedClock(Files.createFile(folder.resolve("synchronized"))).doubt(NOW))
                .isEmpty();
    }

    @Test
    void a_machine_that_woke_up_in_the_past_is_not_whatever_its_time_service_says() throws Exception {
        Path mark = Files.createFile(folder.resolve("synchronized"));
        assertThat(new SynchronizedClock(mark).doubt(Instant.parse("2019-03-01T00:00:00Z")))
                .contains("the clock says 2019-03-01T00:00:00Z, which is in the past; set it");
    }
}
