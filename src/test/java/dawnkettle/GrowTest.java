package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.conf.Configuration;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.intake.ReadHistory;
import dawnkettle.night.PastWeeks;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command grow on the demonstration shop's invented history. */
class GrowTest {
    @TempDir
    Path folder;

    private Terminal.Told grow(Object... words) {
        Clock clock = Clock.fixed(Instant.parse("2026-11-10T12:00:00Z"), java.time.ZoneId.of("America/New_York"));
        return Terminal.runWith(new SetClock(new Main(), clock), words);
    }

    @Test
    void it_tells_what_runs_out_and_is_silent_in_a_pipe() {
        Path file = folder.resolve("ledger.db");
        Configuration conf = ReadConfiguration.from(DemoDay.CONF);
        try (Ledger ledger = Ledger.open(file)) {
            PastWeeks.load(ledger, ReadHistory.from(DemoDay.CONF.resolve("rehearsal/history"), conf.shop()));
        }

        Terminal.Told told =
                grow("grow", "--conf", "conf", "--ledger", file, "--weeks", "1", "--to", "110", "--decodes", "0");

        assertThat(told.status()).isZero();
        assertThat(told.err()).isEmpty();
        assertThat(told.out())
                .startsWith("Fri 6 Nov 2026, the heaviest of 6 making days: 2980 packs\n")
                .contains("orders   packs  kettles    beans")
                .contains("How far each way carries")
                .contains("one more to cook")
                .contains("start 60 min earlier")
                .contains("are rebuilt from what was packed");
    }

    @Test
    void without_a_past_there_is_nothing_to_grow_from() {
        Terminal.Told told = grow("grow", "--conf", "conf", "--ledger", folder.resolve("new.db"));
        assertThat(told.status()).isEqualTo(1);
        assertThat(told.out())
                .isEqualTo("There is no making day in the last 8 weeks of this ledger; nothing to grow from.\n");
    }

    @Test
    void words_out_of_range_are_refused() {
        assertThat(grow("grow", "--to", "900").status()).isEqualTo(2);
        assertThat(grow("grow", "--weeks", "0").err()).contains("--weeks \"0\" is not 1 to 520");
    }
}
