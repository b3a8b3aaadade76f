package dawnkettle.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import dawnkettle.trouble.BadFile;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class SoakCallJsonTest {
    private static final ZoneId ZONE = ZoneId.of("America/New_York");
    private static final SoakCall CALL = new SoakCall(
            LocalDate.of(2026, 12, 4),
            Instant.parse("2026-12-03T15:20:00Z"),
            List.of(new PlannedSoak(
                    "T01",
                    "yellow",
                    Mass.kilograms(90),
                    List.of("OLD", "NEW"),
                    Mass.kilograms(270),
                    Celsius.tenths(85),
                    Celsius.tenths(-5),
                    "monthly norm, “December”",
                    Instant.parse("2026-12-03T16:00:00Z"),
                    Instant.parse("2026-12-04T07:30:00Z"),
                    Instant.parse("2026-12-04T12:00:00Z"),
                    612,
                    Mass.ZERO,
                    List.of())),
            List.of(new SoakCall.GroupMass("yellow", Mass.kilograms(90))),
            List.of("fill before noon"));

    @Test
    void a_soak_call_is_read_as_it_was_written() {
        String text = SoakCallJson.write(CALL, ZONE);
        assertThat(SoakCallJson.read(text)).isEqualTo(CALL);
        assertThat(text).contains("\"fillAt\": \"2026-12-03T11:00:00-05:00\"", "\"roomTenthsCelsius\": -5");
    }

    @Test
    void a_plan_is_no_soak_call() {
        assertThatThrownBy(() -> SoakCallJson.read("{\"schema\": \"dawnkettle-plan/1\"}"))
                .isInstanceOf(BadFile.class)
                .hasMessage("soak-call.json: /schema \"dawnkettle-plan/1\" is not read here; "
                        + "write \"dawnkettle-soak-call/1\"");
    }
}
