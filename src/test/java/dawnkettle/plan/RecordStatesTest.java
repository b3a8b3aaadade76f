package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.RecordStates.Standing;
import dawnkettle.plan.RecordStates.State;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.RecordRules;
import dawnkettle.stock.RecordRules.Wanted;
import dawnkettle.stock.Recorded;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordStatesTest {
    private static final DemoDay DEMO = new DemoDay(LocalDate.of(2026, 12, 4));
    private static final Shop SHOP = DEMO.conf.shop();
    private static final DayPlan PLAN = DEMO.plan(Celsius.degrees(25), 0);
    private static final PlannedBatch BATCH = PLAN.batches().stream()
            .filter(batch -> batch.recipe().equals("firm"))
            .findFirst()
            .orElseThrow();
    private static final Instant BATH = step("bath");
    private static final RecordRules ALL = new RecordRules(Set.of(Wanted.COOKED, Wanted.COOLED, Wanted.YIELD), 120);

    private final List<Recorded> records = new ArrayList<>();

    private static Instant step(String stage) {
        int place = 0;
        for (var step : SHOP.recipe("firm").steps()) {
            if (step.stage().equals(stage))
                return PLAN.operationsOf(BATCH.id()).get(place).start();
            place++;
        }
        throw new AssertionError("no step " + stage);
    }

    private void cooled(String celsius, Instant at) {
        records.add(new Recorded(new Fact.Cooled(BATCH.lot(), Celsius.of(new BigDecimal(celsius))), at, at, "x" + at));
    }

    private void cooked(String celsius, int minutes, Instant at) {
        records.add(new Recorded(
                new Fact.Cooked(BATCH.lot(), Celsius.of(new BigDecimal(celsius)), minutes), at, at, "y" + at));
    }

    private Optional<Standing> standing(RecordRules rules, Wanted wanted, Instant now) {
        return new RecordStates(PLAN, SHOP, rules, records)
                .at(now).stream()
                        .filter(one -> one.lot().equals(BATCH.lot()) && one.wanted() == wanted)
                        .findFirst();
    }

    /**
     * FDA Food Code 3-501.14(A) as adopted by Wisconsin (ATCP 75): 57 to 21 °C within 2 hours and to 5 °C within 6 in all.
     * The first four are its edges; the last is a published profile that fails (USDA-ARS, cooling rice: 38.94 °C at 2 h).
     */
    @ParameterizedTest
    @CsvSource({
        "21.0, 120, 5.0, 360, IN_ORDER",
        "21.0, 121, 5.0, 360, OUT_OF_LIMITS",
        "21.0, 60, 5.0, 360, IN_ORDER",
        "21.0, 120, 5.0, 361, OUT_OF_LIMITS",
        "38.9, 120, 19.9, 360, OUT_OF_LIMITS"
    })
    void cooling_is_judged_by_the_two_steps(String warm, int warmAt, String cold, int coldAt, State state) {
        cooled("57.0", BATH);
        cooled(warm, BATH.plusSeconds(warmAt * 60L));
        cooled(cold, BATH.plusSeconds(coldAt * 60L));
        assertThat(standing(ALL, Wanted.COOLED, BATH.plus(Duration.ofHours(7)))
                        .orElseThrow()
                        .state())
                .isEqualTo(state);
    }

    @Test
    void what_is_measured_out_of_limits_says_by_how_much_though_nothing_is_required() {
        cooled("60.0", BATH);
        cooled("30.0", BATH.plusSeconds(7_500));
        assertThat(standing(RecordRules.NONE, Wanted.COOLED, BATH.plusSeconds(8_000))
                        .orElseThrow()
                        .said())
                .isEqualTo("30.0 °C after 125 minutes of cooling; the limit is 21.0 °C within 120 minutes");
        cooked("96.0", 4, BATH.minusSeconds(3_600));
        Standing cook = standing(RecordRules.NONE, Wanted.COOKED, BATH).orElseThrow();
        assertThat(cook.said()).isEqualTo("cooked at 96.0 °C for 4 minutes; the limit is 98.0 °C for 5 minutes");
        assertThat(cook.holds()).isTrue();
    }

    @Test
    void a_batch_that_is_cooked_on_is_in_order() {
        cooked("96.0", 4, BATH.minusSeconds(3_600));
        cooked("98.5", 6, BATH.minusSeconds(3_000));
        assertThat(standing(ALL, Wanted.COOKED, BATH).orElseThrow().state()).isEqualTo(State.IN_ORDER);
    }

    @Test
    void a_record_is_not_yet_due_then_due_then_overdue_and_only_the_last_holds() {
        Instant end = PLAN.operationsOf(BATCH.id()).get(1).end();
        assertThat(standing(ALL, Wanted.COOKED, end.minusSeconds(1))
                        .orElseThrow()
                        .state())
                .isEqualTo(State.NOT_YET_DUE);
        assertThat(standing(ALL, Wanted.COOKED, end).orElseThrow())
                .matches(one -> one.state() == State.DUE && !one.holds());
        assertThat(standing(ALL, Wanted.COOKED, end.plus(Duration.ofMinutes(120)))
                        .orElseThrow())
                .matches(one -> one.state() == State.OVERDUE && one.holds());
        assertThat(standing(RecordRules.NONE, Wanted.COOKED, end.plus(Duration.ofDays(1))))
                .as("nothing falls due where nothing is required")
                .isEmpty();
    }

    @Test
    void cold_but_measured_too_late_to_show_it_is_as_if_nothing_was_written() {
        cooled("3.0", BATH.plus(Duration.ofHours(8)));
        assertThat(standing(ALL, Wanted.COOLED, BATH.plus(Duration.ofHours(9)))
                        .orElseThrow()
                        .state())
                .isEqualTo(State.OVERDUE);
        assertThat(standing(RecordRules.NONE, Wanted.COOLED, BATH.plus(Duration.ofHours(9))))
                .isEmpty();
    }
}
