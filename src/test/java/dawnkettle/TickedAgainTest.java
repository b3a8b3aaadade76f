package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.store.Effect;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is done is not done again, whoever looks again and however often the machine is started anew. */
class TickedAgainTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final String EVENING = "2026-12-04T15:30";

    @TempDir
    Path folder;

    @Test
    void a_step_that_is_done_is_not_done_again_at_the_same_time_or_later() throws IOException {
        try (PlayedNight night = night("once")) {
            assertDoneOnce(night, "2026-12-03T05:00", "2026-12-03T13:59");
            assertDoneOnce(night, "2026-12-03T15:00", "2026-12-03T23:29");
            assertDoneOnce(night, "2026-12-04T02:00", "2026-12-04T02:01");
            assertDoneOnce(night, EVENING, "2026-12-04T15:59");
            assertThat(new Left(night.folder).names("mail", ".eml"))
                    .containsExactly("2026-12-04.okara.1.eml", "2026-12-04.summary.1.eml");
        }
    }

    private static void assertDoneOnce(PlayedNight night, String when, String later) {
        night.until(when);
        assertNothingHappens(night, when);
        assertNothingHappens(night, later);
    }

    private static void assertNothingHappens(PlayedNight night, String local) {
        Map<String, String> written = new Left(night.folder).writtenAt();
        List<Effect> effects = night.ledger().effects().of(DAY);
        Object plan = night.ledger().plans().latest(DAY);
        Object steps = night.ledger().steps().of(DAY);
        int told = night.told.size();
        night.tickAt(local);
        assertThat(new Left(night.folder).writtenAt()).isEqualTo(written);
        assertThat(night.ledger().effects().of(DAY)).isEqualTo(effects);
        assertThat((Object) night.ledger().plans().latest(DAY)).isEqualTo(plan);
        assertThat((Object) night.ledger().steps().of(DAY)).isEqualTo(steps);
        assertThat(night.told).hasSize(told);
    }

    @Test
    void a_machine_that_is_started_anew_before_every_look_makes_the_same_night() throws IOException {
        Map<String, String> made;
        String plan;
        List<String> told;
        try (PlayedNight night = night("whole")) {
            night.until(EVENING);
            made = new Left(night.folder).bytes();
            plan = night.planText();
            told = night.told;
        }
        try (PlayedNight night = night("broken")) {
            night.until(EVENING, night::restart);
            assertThat(night.planText()).isEqualTo(plan);
            assertThat(night.told).isEqualTo(told);
            assertThat(new Left(night.folder).bytes()).isEqualTo(made);
            assertThat(attempts(night))
                    .isNotEmpty()
                    .allSatisfy((key, times) -> assertThat(times).as(key).isOne());
        }
    }

    private static Map<String, Integer> attempts(PlayedNight night) {
        Map<String, Integer> attempts = new TreeMap<>();
        night.ledger().effects().of(DAY).forEach(effect -> attempts.put(effect.key(), effect.attempts()));
        return attempts;
    }

    private PlayedNight night(String name) throws IOException {
        CopiedShop shop = CopiedShop.quick(Files.createDirectories(folder.resolve(name)))
                .withoutHistory()
                .with("shop.toml", "decodes = 1500", "decodes = 100");
        PlayedNight night = new PlayedNight(shop, DAY, "2026-12-03T05:00");
        night.drop("orders.csv", Files.readString(shop.conf().resolve("rehearsal/orders.csv"), UTF_8));
        return night;
    }
}
