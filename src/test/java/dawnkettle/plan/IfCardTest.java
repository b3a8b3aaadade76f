package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.export.MillraceDay;
import dawnkettle.export.PlanCheck;
import dawnkettle.export.PlanJson;
import dawnkettle.plan.IfCard.Loss;
import dawnkettle.plan.IfCard.Row;
import dawnkettle.plan.Losses.Possible;
import dawnkettle.shop.Shop;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

class IfCardTest {
    private static final Shop SHOP = MillraceDay.SHOP;
    private static final DayPlan PLAN = MillraceDay.PLAN;
    private static final IfCard CARD = IfCard.of(SHOP, MillraceDay.evening(25), PLAN);

    @Test
    void the_demonstration_day_has_a_row_for_every_batch_hand_and_station() {
        assertThat(ids(Loss.Kind.BATCH))
                .containsExactlyElementsOf(
                        PLAN.batches().stream().map(PlannedBatch::id).toList());
        assertThat(ids(Loss.Kind.STATION))
                .containsExactlyElementsOf(PLAN.floor().stations().stream()
                        .map(DayFloor.DayStation::station)
                        .toList());
        assertThat(ids(Loss.Kind.HAND)).containsExactly("02:30", "07:00", "10:30");
    }

    private static List<String> ids(Loss.Kind kind) {
        return CARD.rows().stream()
                .map(Row::loss)
                .filter(loss -> loss.kind() == kind)
                .map(Loss::id)
                .toList();
    }

    @Test
    void the_same_evening_gives_the_same_card() {
        assertThat(IfCard.of(SHOP, MillraceDay.evening(25), PLAN)).isEqualTo(CARD);
    }

    /** The demonstration's orders leave no batch out, so that a loss is felt, in packs or in minutes, more often than not. */
    @Test
    void losses_on_the_demonstration_day_are_felt() {
        assertThat(CARD.rows()).anyMatch(row -> row.shortPacks() > 0);
        assertThat(CARD.rows()).anyMatch(Row::isHarmless);
    }

    @Test
    void every_replan_of_the_demonstration_day_is_a_sound_plan_that_changes_nothing_that_had_happened() {
        WhatIf whatIf = new WhatIf(SHOP, MillraceDay.evening(25), PLAN);
        String before = PlanJson.write(PLAN, SHOP);
        for (Possible loss : whatIf.possible()) {
            Optional<DayPlan> after = whatIf.replan(loss);
            if (after.isEmpty()) continue;
            String text = PlanJson.write(after.get(), SHOP);
            assertThat(PlanCheck.broken(text)).as(loss.toString()).isEmpty();
            assertThat(PlanCheck.revisionBroken(before, text))
                    .as(loss.toString())
                    .isEmpty();
        }
    }

    @Property(tries = 12, seed = "20261125")
    void a_card_of_any_shop_is_sound(@ForAll @LongRange(min = 1, max = 100_000) long seed) {
        Shop shop = AnyShop.of(seed);
        Evening evening = AnyEvening.of(shop, seed, 0);
        DayPlan plan = PlanDay.of(shop, evening);
        WhatIf whatIf = new WhatIf(shop, evening, plan);
        String before = PlanJson.write(plan, shop);
        for (Possible loss : whatIf.possible()) {
            Optional<DayPlan> after = whatIf.replan(loss);
            if (after.isEmpty()) continue;
            String text = PlanJson.write(after.get(), shop);
            assertThat(PlanCheck.broken(text)).as(loss.toString()).isEmpty();
            assertThat(PlanCheck.revisionBroken(before, text))
                    .as(loss.toString())
                    .isEmpty();
        }
        for (Row row : whatIf.card().rows()) {
            if (row.loss().kind() == Loss.Kind.BATCH)
                assertThat(row.shortPacks())
                        .as(row.toString())
                        .isLessThanOrEqualTo(promised(plan, row.loss().id()));
            row.help()
                    .drops()
                    .forEach(drop -> assertThat(drop.lateMinutes())
                            .isLessThan(row.late().stream()
                                    .mapToInt(IfCard.Late::minutes)
                                    .sum()));
        }
    }

    @Test
    void what_a_lost_batch_leaves_short_is_never_more_than_it_was_to_give() {
        for (Row row : CARD.rows())
            if (row.loss().kind() == Loss.Kind.BATCH)
                assertThat(row.shortPacks())
                        .as(row.toString())
                        .isLessThanOrEqualTo(promised(PLAN, row.loss().id()));
    }

    /** Packs for customers of a batch and of all that is made from it. */
    private static int promised(DayPlan plan, String lost) {
        Set<String> own = new HashSet<>(Set.of(lost));
        int known;
        do {
            known = own.size();
            for (String id : List.copyOf(own)) plan.batch(id).feeds().forEach(feed -> own.add(feed.batch()));
        } while (own.size() > known);
        return plan.allocation().stream()
                .filter(one -> plan.findBatch(one.lot())
                        .filter(batch -> own.contains(batch.id()))
                        .isPresent())
                .mapToInt(Allocation::packs)
                .sum();
    }

    /** A measurement, with -Difcard.tell=file: the processor time of the card after a first one, and its rows. */
    @Test
    @EnabledIfSystemProperty(named = "ifcard.tell", matches = ".+")
    void the_card_of_the_demonstration_day_takes_seconds() throws IOException {
        var threads = ManagementFactory.getThreadMXBean();
        long start = threads.getCurrentThreadCpuTime();
        IfCard card = IfCard.of(SHOP, MillraceDay.evening(25), PLAN);
        double seconds = (threads.getCurrentThreadCpuTime() - start) / 1e9;
        List<String> told = new ArrayList<>();
        told.add(PLAN.batches().size() + " batches, " + card.rows().size() + " rows in " + seconds + " s");
        card.rows().forEach(row -> told.add(row.toString()));
        Files.write(Path.of(System.getProperty("ifcard.tell")), told);
        assertThat(seconds).isLessThan(30);
    }
}
