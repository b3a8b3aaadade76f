package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.sheet.Imprint;
import dawnkettle.sheet.Page;
import dawnkettle.sheet.PaperSize;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Effect;
import dawnkettle.store.Ledger;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A printer that does as it is told to fail, on a real ledger. */
class SheetEffectsTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final Instant NOW = Instant.parse("2026-12-03T20:00:00Z");
    private static final Sheet SOAK = new Sheet(
            Sheet.Kind.SOAK,
            "soak",
            new Imprint("Soak sheet", "en", new PaperSize(210, 297), NOW),
            List.of(new Page(List.of(), List.of(), List.of())));

    @TempDir
    Path folder;

    private Ledger ledger;
    private final List<Sheet> printed = new ArrayList<>();
    private final List<DeviceAway> failures = new ArrayList<>();

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private void print() {
        Edges edges = new Edges(
                null,
                new Edges.PaperDesk(
                        sheet -> {
                            printed.add(sheet);
                            if (!failures.isEmpty()) throw failures.remove(0);
                        },
                        null),
                null,
                null,
                null);
        Office office = new Office(null, ledger, Clock.fixed(NOW, ZoneOffset.UTC), edges, (at, line) -> {});
        new SheetEffects(office).print("2026-12-04 revision 1", DAY, List.of(SOAK));
    }

    private Effect.State state() {
        return ledger.effects()
                .find("sheet 2026-12-04 revision 1 soak")
                .orElseThrow()
                .state();
    }

    @Test
    void a_sheet_that_came_out_is_not_printed_again() {
        print();
        print();
        assertThat(printed).containsExactly(SOAK);
        assertThat(state()).isEqualTo(Effect.State.DONE);
    }

    @Test
    void a_sheet_that_surely_did_not_come_out_is_printed_again_unmarked() {
        failures.add(DeviceAway.clean("off", null));
        assertThatThrownBy(this::print).hasMessage("off");
        print();
        assertThat(printed).containsExactly(SOAK, SOAK);
        assertThat(state()).isEqualTo(Effect.State.DONE);
    }

    @Test
    void a_sheet_that_may_have_come_out_is_printed_once_more_with_a_mark_and_then_no_more() {
        failures.add(DeviceAway.ambiguous("hung up", null));
        failures.add(DeviceAway.ambiguous("hung up again", null));
        assertThatThrownBy(this::print).hasMessage("hung up");
        assertThatThrownBy(this::print).hasMessage("hung up again");
        print();
        assertThat(printed).hasSize(2);
        assertThat(printed.get(1).asText()).contains("May have been printed before: keep one, bin the other.");
        assertThat(state()).isEqualTo(Effect.State.AMBIGUOUS);
    }
}
