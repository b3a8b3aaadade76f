package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dawnkettle.export.PlanCheck;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import dawnkettle.store.Ledger;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Four nights that were looked at and found right: each told on one page. */
class GoldenNightsTest {
    @TempDir
    Path folder;

    private CopiedShop shop;

    @Test
    void a_warm_december_night_takes_one_decision_at_the_close() throws IOException {
        assertThat(callOf(night("december-warm", "2026-12-03T15:00", 25), "2026-12-04")
                        .isEmpty())
                .isTrue();
    }

    @Test
    void a_cold_december_night_calls_for_beans_in_the_morning_and_the_close_keeps_to_every_tub() throws IOException {
        JsonNode plan = night("december-cold", "2026-12-03T15:00", 12);
        SoakCall call = callOf(plan, "2026-12-04");
        assertThat(call.tubs()).isNotEmpty();
        assertThat(call.decidedAt()).hasToString("2026-12-03T10:00:00Z");
        List<String> filled = new ArrayList<>();
        plan.path("soak")
                .forEach(tub -> filled.add(tub.path("tub").asText() + " "
                        + tub.path("beansGrams").asLong() + " g "
                        + OffsetDateTime.parse(tub.path("fillAt").asText()).toInstant()));
        for (PlannedSoak tub : call.tubs())
            assertThat(filled).contains(tub.tub() + " " + tub.beans().milligrams() / 1_000 + " g " + tub.fillAt());
    }

    @Test
    void saturday_makes_for_mondays_early_van() throws IOException {
        JsonNode plan = night("saturday", "2026-12-04T15:00", 17);
        List<String> loads = new ArrayList<>();
        plan.path("allocation")
                .forEach(line -> loads.add(line.path("route").asText() + " "
                        + line.path("deliveryDate").asText() + " "
                        + line.path("source").asText()));
        assertThat(loads).contains("HARBOR 2026-12-07 batch");
        assertThat(plan.path("routes"))
                .anySatisfy(route -> assertThat(route.path("route").asText() + " "
                                + route.path("departs").asText())
                        .isEqualTo("HARBOR 2026-12-07T05:15:00-05:00"));
    }

    @Test
    void the_day_after_a_closed_day_is_planned_on_the_last_day_that_was_worked() throws IOException {
        JsonNode plan = night("after-a-closed-day", "2026-12-07T15:00", 17);
        assertThat(plan.path("productionDate").asText()).isEqualTo("2026-12-09");
        assertThat(plan.path("computedAt").asText()).startsWith("2026-12-07T15:00");
        assertThat(plan.path("orders"))
                .noneSatisfy(
                        order -> assertThat(order.path("deliveryDate").asText()).isEqualTo("2026-12-08"));
    }

    private JsonNode night(String name, String at, int room) throws IOException {
        shop = CopiedShop.quick(folder);
        Terminal.Told told = shop.rehearse(at, "--room", room);
        assertThat(told.err()).isEmpty();
        assertThat(told.status()).isZero();
        String text = Files.readString(shop.out().resolve("plan.json"), UTF_8);
        assertThat(PlanCheck.broken(text)).isEmpty();
        Golden.check("night/" + name + ".txt", page(told.out()));
        return new ObjectMapper().readTree(text);
    }

    /** The page without what differs from machine to machine: the folder, and how long it took. */
    private String page(String told) {
        return told.lines()
                .filter(line -> !line.startsWith("Computed and written in "))
                .map(line -> line.replace(shop.out().toString(), "OUT"))
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private SoakCall callOf(JsonNode plan, String day) {
        assertThat(plan.path("productionDate").asText()).isEqualTo(day);
        try (Ledger ledger = Ledger.open(shop.out().resolve("ledger.db"))) {
            return ledger.soaks().find(LocalDate.parse(day)).orElseThrow();
        }
    }
}
