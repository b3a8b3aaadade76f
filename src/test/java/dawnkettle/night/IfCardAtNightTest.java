package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.ClosedBook;
import dawnkettle.measure.Celsius;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.Heading;
import dawnkettle.plan.PlanDay;
import dawnkettle.plan.PlannedBatch;
import dawnkettle.plan.PlannedOrder;
import dawnkettle.plan.Temperatures;
import dawnkettle.sheet.Sheet;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IfCardAtNightTest {
    @TempDir
    Path folder;

    @Test
    void a_kept_plan_has_a_card_with_all_its_batches() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            LabelShop shop = new LabelShop(ledger);
            shop.now = LabelShop.PLAN.heading().computedAt();
            shop.temperatures = new Temperatures(Celsius.degrees(18), Celsius.degrees(10), "typed in");
            assertThat(new Evenings(shop.office)
                            .ifCard(LabelShop.PLAN)
                            .orElseThrow()
                            .rows())
                    .extracting(row -> row.loss().id())
                    .containsAll(LabelShop.PLAN.batches().stream()
                            .map(PlannedBatch::id)
                            .toList());
        }
    }

    @Test
    void a_batch_written_down_as_lost_is_known_to_the_next_plan_which_gives_nothing_of_it() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            LabelShop shop = new LabelShop(ledger);
            PlannedBatch batch = LabelShop.PLAN.batches().get(0);
            shop.now = LabelShop.PLAN.operationsOf(batch.id()).get(2).start();
            shop.temperatures = new Temperatures(Celsius.degrees(18), Celsius.degrees(10), "typed in");
            Instant lost = shop.now;
            ledger.records().add(new Recorded(new Fact.LostBatch(batch.lot(), "burnt"), lost, lost, "test 1"));

            ClosedBook book = new ClosedBook(
                    LabelShop.DAY,
                    LabelShop.PLAN.heading().computedAt(),
                    LabelShop.PLAN.orders().stream().map(PlannedOrder::line).toList());
            DayPlan after =
                    PlanDay.of(LabelShop.DEMO.conf.shop(), new Evenings(shop.office).of(LabelShop.DAY, book, 0));

            assertThat(after.heading().frozen())
                    .contains(new Heading.Frozen(Heading.Frozen.Kind.BATCH_LOST, batch.id(), lost));
            assertThat(after.operationsOf(batch.id())).hasSize(2);
            assertThat(after.allocation()).extracting(Allocation::lot).doesNotContain(batch.lot());
        }
    }

    @Test
    void a_card_that_never_ends_is_left_out_and_told_and_every_other_sheet_comes() {
        CountDownLatch never = new CountDownLatch(1);
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            LabelShop shop = new LabelShop(ledger);
            shop.now = LabelShop.PLAN.heading().computedAt();
            shop.temperatures = new Temperatures(Celsius.degrees(18), Celsius.degrees(10), "typed in");
            BoxedPlanner hanging = new BoxedPlanner(
                    shop.office,
                    new BoxedPlanner.Planner(PlanDay::of, PlanDay::soakCall, (any, evening, plan) -> {
                        awaitFor(never);
                        return null;
                    }),
                    Duration.ofMillis(300));
            PrintSheets sheets = new PrintSheets(
                    shop.office,
                    new SheetEffects(shop.office),
                    plan -> new Evenings(shop.office).ifCard(plan, hanging::card));

            assertThat(sheets.run(LabelShop.DAY)).endsWith(" sheets, without the if... card");
            assertThat(shop.sheets)
                    .extracting(Sheet::name)
                    .contains("soak", "run", "pick", "free", "records")
                    .doesNotContain("if");
            assertThat(shop.story)
                    .contains("no if... card of 2026-12-04: working out the if... card took longer than 0 s");
        } finally {
            never.countDown();
        }
    }

    /** Pays no heed to being stopped. */
    private static void awaitFor(CountDownLatch never) {
        for (boolean isOver = false; !isOver; ) {
            try {
                never.await();
                isOver = true;
            } catch (InterruptedException stubborn) {
                isOver = false;
            }
        }
    }

    @Test
    void a_card_that_does_not_come_out_is_told_of_and_holds_nothing_up() {
        try (Ledger ledger = Ledger.open(folder.resolve("ledger.db"))) {
            LabelShop shop = new LabelShop(ledger);
            shop.now = LabelShop.PLAN.heading().computedAt();
            assertThat(new Evenings(shop.office).ifCard(LabelShop.PLAN)).isEmpty();
            assertThat(shop.story).anyMatch(line -> line.startsWith("no if... card of 2026-12-04"));
        }
    }
}
