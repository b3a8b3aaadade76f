package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who watches from outside hears of steps that were done, and of none that went wrong. */
class LookoutTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private static final Instant EVENING = Instant.parse("2026-12-03T22:00:00Z");

    @TempDir
    Path state;

    private StepRow tickOf(CareShop shop) {
        shop.ledger.steps().due(StepKey.of("first start", LocalDate.EPOCH), EVENING.minusSeconds(900_000), EVENING);
        Night night = new Night(
                shop.office(),
                slot -> slot.step() == Step.SELF_TEST && slot.businessDate().equals(FRIDAY));
        night.tick();
        return shop.ledger.steps().find(StepKey.of("self test", FRIDAY)).orElseThrow();
    }

    @Test
    void a_step_that_is_done_is_told_once() {
        CareShop shop = new CareShop(state, EVENING);

        assertThat(tickOf(shop).state()).isEqualTo(StepRow.State.DONE);
        assertThat(shop.verified).isEqualTo(1);
        tickOf(shop);
        assertThat(shop.verified).isEqualTo(1);
        shop.ledger.close();
    }
}
