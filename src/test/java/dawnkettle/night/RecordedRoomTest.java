package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.ClosedBook;
import dawnkettle.export.PlanCheck;
import dawnkettle.export.PlanJson;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Evening;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedOperation;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.PlannedSoak;
import dawnkettle.plan.SoakBelief;
import dawnkettle.plan.SoakBeliefs;
import dawnkettle.plan.Temperatures;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import dawnkettle.store.StepKey;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written down of beans, hands and stations reaches the next plan of the day, and is told on it. */
class RecordedRoomTest {
    private static final DayPlan PLAN = LabelShop.PLAN;
    private static final LocalDate MONDAY = LabelShop.DAY.plusDays(3);

    @TempDir
    Path folder;

    private Ledger ledger;
    private LabelShop shop;
    private Shop conf;
    private int line;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LabelShop(ledger);
        shop.temperatures = new Temperatures(Celsius.degrees(18), Celsius.degrees(10), "typed in");
        conf = LabelShop.DEMO.conf.shop();
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    private long write(Fact fact, Instant at) {
        ledger.records().add(new Recorded(fact, at, at, "test " + ++line));
        return ledger.records().lastNumber();
    }

    private Evening evening(LocalDate day) {
        ClosedBook book = new ClosedBook(
                day,
                PLAN.heading().computedAt(),
                PLAN.orders().stream().map(PlannedOrder::line).toList());
        return new Evenings(shop.office).of(day, book, 0);
    }

    private DayPlan again() {
        return new CountedSoaks(shop.office).told(PlanDay.of(conf, evening(LabelShop.DAY)));
    }

    private static PlannedSoak tub() {
        return PLAN.soaks().get(0);
    }

    private static double hours(SoakBelief belief) {
        return belief.law().hoursTo(belief.law().target(), 18);
    }

    @Test
    void a_look_at_a_tub_of_the_day_moves_the_next_revision_and_is_told() {
        Instant seen = tub().readyAt().plusSeconds(1_200);
        write(new Fact.SoakSeen(LabelShop.DAY, tub().tub(), false), seen);
        shop.now = seen;
        SoakBeliefs beliefs = evening(LabelShop.DAY).soakRoom().beliefs();
        assertThat(beliefs.of(tub().soakGroup()).observations()).isEqualTo(1);
        assertThat(hours(beliefs.of(tub().soakGroup())))
                .isBetween(hours(SoakBelief.PUBLISHED) * 1.02, hours(SoakBelief.PUBLISHED) * 1.3);

        DayPlan after = again();

        assertThat(after.soaks().get(0).certainty().orElseThrow().observations())
                .isEqualTo(1);
        assertThat(after.soaks().get(0).readyAt()).isAfter(tub().readyAt());
        assertThat(after.warnings())
                .anyMatch(
                        one -> one.startsWith("Soak constants of " + tub().soakGroup() + " beans learnt from 1 look: "))
                .anyMatch(one -> one.matches("The beans in tub " + tub().tub()
                        + " were not ready at [0-9:]{5}: look again before grinding\\."));
        assertThat(PlanJson.write(after, conf)).contains("\"soakObservations\": 1");
    }

    /** Its soak call, plan and revisions count alike: with the looks before the working day ahead of it. */
    @Test
    void a_look_counts_for_all_days_after_the_next() {
        Instant seen = tub().readyAt().minusSeconds(3_600);
        Instant written = LabelShop.DAY.atTime(3, 0).atZone(conf.house().zone()).toInstant();
        ledger.records().add(new Recorded(new Fact.SoakSeen(LabelShop.DAY, tub().tub(), true), seen, written, "test"));
        assertThat(beliefs(LabelShop.DAY.plusDays(1))).isEqualTo(SoakBeliefs.PUBLISHED);
        assertThat(beliefs(MONDAY).of(tub().soakGroup()).observations()).isEqualTo(1);
        assertThat(hours(beliefs(MONDAY).of(tub().soakGroup()))).isLessThan(hours(SoakBelief.PUBLISHED));
    }

    private SoakBeliefs beliefs(LocalDate day) {
        return new CountedSoaks(shop.office).of(day).beliefs();
    }

    @Test
    void a_look_that_is_taken_back_is_as_if_it_had_never_been() {
        long number = write(
                new Fact.SoakSeen(LabelShop.DAY, tub().tub(), false),
                tub().readyAt().plusSeconds(60));
        write(new Fact.Cancelled(number, "the other tub"), tub().readyAt().plusSeconds(90));
        assertThat(beliefs(LabelShop.DAY)).isEqualTo(SoakBeliefs.PUBLISHED);
        assertThat(new CountedSoaks(shop.office).told(PLAN).warnings()).isEqualTo(PLAN.warnings());
    }

    @Test
    void a_wrong_look_after_an_hour_moves_nothing_and_is_told() {
        write(
                new Fact.SoakSeen(LabelShop.DAY, tub().tub(), true),
                tub().fillAt().plusSeconds(3_600));
        shop.now = tub().fillAt().plusSeconds(3_700);
        assertThat(beliefs(LabelShop.DAY)).isEqualTo(SoakBeliefs.PUBLISHED);
        assertThat(again().soaks().get(0).readyAt()).isEqualTo(tub().readyAt());
        assertThat(again().warnings()).anyMatch(one -> one.startsWith("1 look at ") && one.endsWith("is left out."));
    }

    private static PlannedOperation busy() {
        return PLAN.operations().stream()
                .filter(step -> step.stage().equals("filter"))
                .skip(4)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void nothing_is_done_at_a_station_that_is_down_and_the_plan_says_so() {
        PlannedOperation step = busy();
        shop.now = step.start().minus(Duration.ofHours(2));
        Instant until = step.start().plus(Duration.ofMinutes(40));
        write(new Fact.Down(LabelShop.DAY, step.station(), step.start(), until, "belt"), shop.now);

        DayPlan after = again();

        assertThat(after.operations())
                .filteredOn(one -> one.station().equals(step.station()))
                .noneMatch(one -> one.start().isBefore(until) && step.start().isBefore(one.end()));
        assertThat(after.warnings())
                .anyMatch(one -> one.startsWith("Counted with: station " + step.station() + " is down from "));
        sound(after);
    }

    @Test
    void who_is_away_binds_no_hands_and_the_plan_says_so() {
        PlannedOperation step = busy();
        shop.now = step.start().minus(Duration.ofHours(1));
        Instant until = step.start().plus(Duration.ofHours(2));
        write(new Fact.Away(LabelShop.DAY, 6, step.start(), until, "ill"), shop.now);

        DayPlan after = again();

        assertThat(after.floor().hands()).isNotEqualTo(PLAN.floor().hands());
        assertThat(after.warnings()).anyMatch(one -> one.startsWith("Counted with: 3 hands are away from "));
        sound(after);
    }

    /** By the independent checker; read again it is the same. */
    private void sound(DayPlan after) {
        String text = PlanJson.write(after, conf);
        assertThat(PlanCheck.broken(text)).isEmpty();
        assertThat(PlanCheck.revisionBroken(PlanJson.write(PLAN, conf), text)).isEmpty();
        assertThat(PlanJson.read(text, conf)).isEqualTo(after);
    }

    @Test
    void what_is_known_before_the_close_is_in_the_first_plan() {
        Instant from = MONDAY.atTime(5, 0).atZone(conf.house().zone()).toInstant();
        write(new Fact.Away(MONDAY, 2, from, from.plusSeconds(7_200), ""), shop.now);
        write(new Fact.Down(MONDAY, "FRYER", from, from.plusSeconds(7_200), ""), shop.now);
        Evening evening = evening(MONDAY);
        assertThat(evening.committed().before()).isEmpty();
        assertThat(evening.committed().disruption().hands()).hasSize(1);
        assertThat(evening.committed().disruption().stations()).hasSize(1);
        assertThat(evening(LabelShop.DAY).committed().disruption().isNone()).isTrue();
    }

    /** Each such record plans its day again once; one that takes it back as well, and one of another day not. */
    @Test
    void each_record_plans_its_day_again_once() {
        shop.now = LabelShop.DAY.atTime(1, 0).atZone(conf.house().zone()).toInstant();
        assertThat(due()).isEmpty();
        Instant from = busy().start();
        long down = write(new Fact.Down(LabelShop.DAY, "FRYER", from, from.plusSeconds(600), ""), shop.now);
        assertThat(due()).containsExactly(new StepKey(ReplanLosses.STEP, LabelShop.DAY, (int) down));
        long back = write(new Fact.Cancelled(down, "the other one"), shop.now);
        assertThat(due()).containsExactly(new StepKey(ReplanLosses.STEP, LabelShop.DAY, (int) back));
        write(new Fact.Away(MONDAY.plusDays(7), 2, from, from.plusSeconds(600), ""), shop.now);
        assertThat(due()).containsExactly(new StepKey(ReplanLosses.STEP, LabelShop.DAY, (int) back));
    }

    private List<StepKey> due() {
        List<StepKey> due = new ArrayList<>();
        new ReplanLosses(shop.office).run((key, day) -> due.add(key));
        return due;
    }

    @Test
    void a_mail_of_the_crew_says_it_in_its_own_word() {
        shop.now = LabelShop.DAY.atTime(1, 0).atZone(conf.house().zone()).toInstant();
        ObeyLines lines = new ObeyLines(shop.office, "mail 1", Optional.of(java.util.Set.of("hands", "down")));
        ObeyLines.Outcome outcome = lines.obey("hands 1 05:00 07:00 ill\ndown FRYER 06:00 07:00\naway 1 08:00 09:00\n"
                + "up FRYER 06:30\nyield 261204-FI01 60");
        assertThat(outcome.done()).as("%s", outcome.parts()).isEqualTo(4);
        assertThat(outcome.open()).isEqualTo(1);
        assertThat(evening(LabelShop.DAY).committed().disruption().hands()).hasSize(2);
        assertThat(evening(LabelShop.DAY).committed().disruption().stations())
                .extracting(
                        one -> Duration.between(one.span().from(), one.span().until()))
                .containsExactly(Duration.ofMinutes(30));
    }
}
