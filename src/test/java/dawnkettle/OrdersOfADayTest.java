package dawnkettle;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.export.PlanCheck;
import dawnkettle.night.Step;
import dawnkettle.plan.Allocation;
import dawnkettle.plan.DayPlan;
import dawnkettle.plan.PlannedLabel;
import dawnkettle.plan.PlannedOrder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a dropped file to the packer's sheet; what is not understood, and what comes too late. */
class OrdersOfADayTest {
    private static final LocalDate DAY = LocalDate.of(2026, 12, 4);
    private static final String HEADER = "order,line,customer,product,packs,delivery_date,action\n";

    @TempDir
    Path folder;

    private CopiedShop shop;
    private Left left;

    @BeforeEach
    void copy() throws IOException {
        shop = CopiedShop.quick(folder).withoutHistory().with("shop.toml", "decodes = 1500", "decodes = 100");
        left = new Left(shop.out());
    }

    private PlayedNight night() throws IOException {
        PlayedNight night = new PlayedNight(shop, DAY, "2026-12-03T05:00");
        night.drop("orders.csv", Files.readString(shop.conf().resolve("rehearsal/orders.csv"), UTF_8));
        night.tickAt("2026-12-03T05:00");
        return night;
    }

    @Test
    void new_and_amended_packs_come_to_the_pick_sheet_and_what_is_unknown_to_the_refusals() throws IOException {
        try (PlayedNight night = night()) {
            night.drop("noon.csv", HEADER + """
                    N1,1,C074,MED-400,24,2026-12-04,
                    N2,1,C072,FRY-150,7,2026-12-04,new
                    N3,1,C061,FIRM-BKT,2,2026-12-04,
                    Q1204-067,4,C067,XFIRM-350,40,2026-12-04,amend
                    N4,1,C061,FRIM-400,12,2026-12-04,
                    N5,1,UNKNOWN,FIRM-400,12,2026-12-04,
                    """);
            night.until("2026-12-03T16:00");
            assertThat(night.told).contains("noon.csv: 3 lines and 1 amendments taken, 2 problems named beside it");
            assertThat(PlanCheck.broken(night.planText())).isEmpty();
        }
        assertThat(PickWords.packs(left))
                .containsEntry("Dunlin Quay Canteen: Medium tofu 400 g", 24)
                .containsEntry("Pennyfold Cafe: Fried pouches 6 pieces 150 g", 7)
                .containsEntry("Osterfell Deli: Firm tofu bucket 5 kg", 2)
                // 16 of the standing order and 40 instead of 24.
                .containsEntry("Cobblewick Greengrocer: Extra firm tofu 350 g", 16 + 40);
        assertThat(shop.out().resolve("drop/taken/noon.csv")).exists();
        assertThat(shop.out().resolve("drop/taken/noon.csv.refusals.txt")).hasContent("""
                These orders were not taken, the others of the file were:
                noon.csv:6:11: unknown product "FRIM-400"; did you mean "FIRM-400"?
                noon.csv:7:6: unknown customer "UNKNOWN"; write a code of customers.csv
                """);
    }

    @Test
    void the_pick_sheet_holds_exactly_what_the_plan_allocates() throws IOException {
        Map<String, Integer> allocated = new HashMap<>();
        try (PlayedNight night = night()) {
            night.until("2026-12-03T16:00");
            for (Allocation one : night.plan().allocation())
                allocated.merge(
                        night.conf().shop().customer(one.customer()).name() + ": "
                                + night.conf().shop().product(one.product()).name(),
                        one.packs(),
                        Integer::sum);
        }
        assertThat(PickWords.packs(left)).isEqualTo(allocated).isNotEmpty();
    }

    @Test
    void a_line_that_comes_after_the_close_is_late_and_stands_in_the_revision_at_dawn() throws IOException {
        try (PlayedNight night = night()) {
            night.until("2026-12-03T17:59");
            assertThat(night.plan().heading().revision()).isOne();
            night.drop("late.csv", HEADER + "LATE-1,1,C072,FIRM-400,6,2026-12-04,\n");
            night.tickAt("2026-12-03T18:00");
            night.until("2026-12-04T02:00");
            DayPlan plan = night.plan();
            assertThat(plan.heading().revision()).isEqualTo(2);
            PlannedOrder late = order(plan, "LATE-1");
            assertThat(late.line().late()).isTrue();
            assertThat(late.plannedPacks()).isEqualTo(6);
            assertThat(PlanCheck.broken(night.planText())).isEmpty();
            assertThat(night.ledger().broken(DAY)).isEmpty();
            night.until("2026-12-04T06:30");
        }
        String summary = left.names("mail", ".summary.2.eml").get(0);
        assertThat(Files.readString(shop.out().resolve("mail").resolve(summary), UTF_8))
                .contains("LATE-1");
        assertThat(PickWords.packs(left)).containsEntry("Pennyfold Cafe: Firm tofu 400 g", 6);
        assertThat(left.sheetLinesAsDrawn("pick"))
                .anyMatch(line -> line.endsWith("Revision 2 replaces revision 1: bin revision 1"));
    }

    @Test
    void a_late_line_makes_no_van_late_that_was_in_time() throws IOException {
        try (PlayedNight night = night()) {
            night.until("2026-12-03T17:59");
            assertThat(night.plan().lateRoutes()).isZero();
            night.drop("late.csv", HEADER + "LATE-1,1,C072,FIRM-400,6,2026-12-04,\n");
            night.until("2026-12-04T02:00");
            assertThat(night.plan().heading().revision()).isEqualTo(2);
            assertThat(night.plan().lateRoutes()).isZero();
        }
    }

    @Test
    void a_dawn_check_that_comes_late_leaves_lots_that_are_labelled_as_they_are() throws IOException {
        try (PlayedNight night = night()) {
            night.until("2026-12-03T17:59");
            night.drop("late.csv", HEADER + "LATE-1,1,C072,FIRM-400,6,2026-12-04,\n");
            night.without(Step.DAWN_CHECK);
            night.until("2026-12-04T06:00");
            DayPlan before = night.plan();
            String first = night.planText();
            Set<String> labelled = left.names("labels", ".bin").stream()
                    .map(name -> name.substring(0, 11))
                    .collect(Collectors.toSet());
            Map<String, String> written = left.writtenAt();
            assertThat(labelled).isNotEmpty();

            night.with(Step.DAWN_CHECK);
            night.until("2026-12-04T06:01");
            DayPlan after = night.plan();
            assertThat(after.heading().revision()).isEqualTo(2);
            assertThat(order(after, "LATE-1").line().late()).isTrue();
            for (String lot : labelled)
                assertThat(labels(after, lot))
                        .as(lot)
                        .isEqualTo(labels(before, lot))
                        .isNotEmpty();
            assertThat(PlanCheck.revisionBroken(first, night.planText())).isEmpty();
            assertThat(PlanCheck.broken(night.planText())).isEmpty();

            night.until("2026-12-04T15:30");
            Map<String, String> later = left.writtenAt();
            written.keySet().removeIf(name -> !name.startsWith("labels/"));
            assertThat(later).containsAllEntriesOf(written);
            assertThat(night.ledger().broken(DAY)).isEmpty();
        }
    }

    private static PlannedOrder order(DayPlan plan, String number) {
        return plan.orders().stream()
                .filter(order -> order.line().order().text().equals(number))
                .findFirst()
                .orElseThrow();
    }

    private static List<PlannedLabel> labels(DayPlan plan, String lot) {
        return plan.labels().stream()
                .filter(label -> label.lot().text().equals(lot))
                .toList();
    }
}
