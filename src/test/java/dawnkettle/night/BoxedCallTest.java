package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.plan.Evening;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakCall;
import dawnkettle.sheet.Mark;
import dawnkettle.sheet.Sheet;
import dawnkettle.shop.Shop;
import dawnkettle.store.Ledger;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A planner that never answers at five in the morning: beans go to soak all the same, by what is known without it. */
class BoxedCallTest {
    private static final LocalDate DAY = LadderShop.DAY;

    @TempDir
    Path folder;

    private final CountDownLatch never = new CountDownLatch(1);
    private Ledger ledger;
    private LadderShop shop;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LadderShop(ledger, Duration.ofMillis(300), EnumSet.of(Step.SOAK_CALL));
        shop.calls = (any, evening, closesAt) -> hang();
    }

    @AfterEach
    void close() {
        never.countDown();
        ledger.close();
    }

    /** Pays no heed to being stopped. */
    private SoakCall hang() {
        while (true) {
            try {
                never.await();
                throw new IllegalStateException("woken");
            } catch (InterruptedException stubborn) {
                assertThat(stubborn).isNotNull();
            }
        }
    }

    private SoakCall callOf(LocalDate day) {
        Instant fill = day.minusDays(1)
                .atTime(7, 30)
                .atZone(LadderShop.shop().house().zone())
                .toInstant();
        PlannedSoak tub = new PlannedSoak(
                "T01",
                "yellow",
                Mass.kilograms(80),
                List.of("YEL-1"),
                Mass.kilograms(240),
                Celsius.degrees(9),
                Celsius.degrees(12),
                "sensor",
                fill,
                fill.plus(Duration.ofHours(19)),
                fill.plus(Duration.ofHours(26)),
                900,
                Mass.ZERO,
                List.of(),
                Optional.empty(),
                List.of());
        return new SoakCall(
                day,
                fill.minus(Duration.ofHours(2)),
                List.of(tub),
                List.of(new SoakCall.GroupMass("yellow", Mass.kilograms(80))),
                List.of());
    }

    private StepRow step() {
        return ledger.steps().find(StepKey.of("soak call", DAY)).orElseThrow();
    }

    private static String words(Sheet sheet) {
        return sheet.pages().stream()
                .flatMap(page -> page.marks().stream())
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).string())
                .collect(Collectors.joining(" "));
    }

    @Test
    void the_tubs_of_a_week_ago_stand_in_at_the_same_hour_and_the_sheet_says_so() {
        ledger.soaks().commit(callOf(DAY.minusWeeks(1)));
        shop.tickAt(5, 1);

        SoakCall call = ledger.soaks().find(DAY).orElseThrow();
        assertThat(call.tubs()).hasSize(1);
        PlannedSoak tub = call.tubs().get(0);
        assertThat(tub.beans()).isEqualTo(Mass.kilograms(80));
        assertThat(tub.fillAt()).isEqualTo(LadderShop.at(7, 30));
        assertThat(tub.beanLots())
                .as("which beans lie there now is written down by hand")
                .isEmpty();
        assertThat(shop.named("soak-call")).hasSize(1);
        assertThat(words(shop.named("soak-call").get(0)))
                .contains("these are the tubs of 2026-11-27. Is the room as warm as it was then?");
        assertThat(step().state()).isEqualTo(StepRow.State.DONE);
        assertThat(step().note())
                .startsWith(
                        "80 kg of beans go to soak before the close, in 1 tub; The planner did not come to an end:");
        assertThat(shop.story)
                .contains(
                        "the soak call with search did not come out (the soak call with search took longer than 0 s)");
    }

    @Test
    void a_search_alone_that_hangs_leaves_the_part_that_is_ordered_for_sure() {
        shop.calls = (any, evening, closesAt) -> evening.budget().decodes() > 0 ? hang() : sure(any, evening, closesAt);
        ledger.soaks().commit(callOf(DAY.minusWeeks(1)));
        shop.tickAt(5, 1);

        SoakCall call = ledger.soaks().find(DAY).orElseThrow();
        assertThat(call.notes().get(0))
                .isEqualTo("The planner did not come to an end: this is the part that is ordered for sure, without what"
                        + " usually still comes.");
        assertThat(call.tubs()).extracting(PlannedSoak::beans).containsExactly(Mass.kilograms(60));
    }

    private SoakCall sure(Shop any, Evening evening, Instant closesAt) {
        assertThat(evening.outlook().allowances()).isEmpty();
        SoakCall whole = callOf(DAY);
        PlannedSoak tub = whole.tubs().get(0);
        PlannedSoak less = new PlannedSoak(
                tub.tub(),
                tub.soakGroup(),
                Mass.kilograms(60),
                tub.beanLots(),
                tub.water(),
                tub.waterTemperature(),
                tub.room(),
                tub.source(),
                tub.fillAt(),
                tub.readyAt(),
                tub.latestGrindAt(),
                tub.equivalentMinutes(),
                tub.leftOver(),
                List.of(),
                Optional.empty(),
                List.of());
        return new SoakCall(DAY, evening.now(), List.of(less), whole.groups(), List.of());
    }

    @Test
    void without_a_call_in_four_weeks_nobody_guesses_and_it_is_tried_again() {
        shop.tickAt(5, 1);
        assertThat(step().state()).isEqualTo(StepRow.State.FAILED);
        assertThat(ledger.soaks().find(DAY)).isEmpty();
        assertThat(shop.mails)
                .anyMatch(mail -> mail.subject().startsWith("Please look: soak call of 2026-12-04 is not done"));
    }
}
