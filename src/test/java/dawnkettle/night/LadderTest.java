package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.book.ClosedBook;
import dawnkettle.mail.Mail;
import dawnkettle.plan.Heading;
import dawnkettle.plan.PlanDay;
import dawnkettle.sheet.Mark;
import dawnkettle.sheet.Sheet;
import dawnkettle.store.Ledger;
import dawnkettle.store.LedgerWire;
import dawnkettle.store.StepKey;
import dawnkettle.store.StepRow;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people have to work from when the planner fails: one rung down each time, and up again as soon as it can. */
class LadderTest {
    private static final Duration LONG = Duration.ofMinutes(2);

    @TempDir
    Path folder;

    private final CountDownLatch never = new CountDownLatch(1);
    private Ledger ledger;
    private LadderShop shop;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LadderShop(ledger, LONG);
    }

    @AfterEach
    void close() {
        never.countDown();
        ledger.close();
    }

    private StepRow step(Step step) {
        return ledger.steps().find(StepKey.of(step.word(), LadderShop.DAY)).orElseThrow();
    }

    private static List<String> texts(Sheet sheet) {
        return sheet.pages().stream()
                .flatMap(page -> page.marks().stream())
                .filter(Mark.Text.class::isInstance)
                .map(mark -> ((Mark.Text) mark).string())
                .toList();
    }

    private static String words(Sheet sheet) {
        return String.join(" ", texts(sheet));
    }

    private void plannerBreaks() {
        shop.planner = (any, evening) -> {
            throw new IllegalStateException("kettle 3 has no number");
        };
    }

    private void plannerHangs() {
        shop.planner = (any, evening) -> {
            try {
                never.await();
            } catch (InterruptedException stubborn) {
                return waitOn();
            }
            throw new IllegalStateException("woken");
        };
    }

    /** Not even a planner that pays no heed to being stopped holds the night up. */
    private dawnkettle.plan.DayPlan waitOn() {
        try {
            never.await();
        } catch (InterruptedException again) {
            Thread.currentThread().interrupt();
        }
        throw new IllegalStateException("woken");
    }

    @Test
    void a_search_that_breaks_leaves_a_plan_without_search() {
        AtomicInteger asked = new AtomicInteger();
        shop.planner = (any, evening) -> {
            asked.incrementAndGet();
            if (evening.budget().decodes() > 0) throw new StackOverflowError();
            return PlanDay.of(any, evening);
        };
        shop.tickAt(14, 0);
        shop.tickAt(15, 0);
        assertThat(asked).hasValue(2);
        assertThat(shop.office.plan(LadderShop.DAY).orElseThrow().heading().mode())
                .isEqualTo(Heading.Mode.NO_SEARCH);
        assertThat(shop.named("orders-only")).isEmpty();
    }

    @Test
    void a_search_that_hangs_leaves_a_plan_without_search_once_its_time_is_over() {
        LadderShop quick = new LadderShop(ledger, Duration.ofSeconds(10));
        plannerHangs();
        var hangs = shop.planner;
        quick.planner =
                (any, evening) -> evening.budget().decodes() > 0 ? hangs.apply(any, evening) : PlanDay.of(any, evening);
        quick.tickAt(14, 0);
        quick.tickAt(15, 0);
        assertThat(quick.office.plan(LadderShop.DAY).orElseThrow().heading().mode())
                .isEqualTo(Heading.Mode.NO_SEARCH);
        assertThat(quick.story).anyMatch(line -> line.contains("planning with search took longer than 10 s"));
    }

    @Test
    void a_planner_that_breaks_leaves_the_orders_alone_as_the_book_was_closed_and_nothing_with_a_date() {
        plannerBreaks();
        shop.order("C002", "FIRM-400", 43);
        shop.tickAt(14, 0);
        shop.tickAt(15, 0);

        Sheet sheet = shop.named("orders-only").get(0);
        assertThat(words(sheet))
                .contains("Orders-only sheet O-261204", "ORDERS ONLY: products and packs")
                .contains("No plan came out: the planner made a mistake.")
                .contains("F-261204");
        ClosedBook book = ledger.closes().find(LadderShop.DAY).orElseThrow();
        Map<String, Integer> packs = new TreeMap<>();
        book.lines().forEach(line -> packs.merge(line.product(), line.packs(), Integer::sum));
        assertThat(packs.get("FIRM-400")).isGreaterThanOrEqualTo(43);
        assertThat(words(sheet)).contains("Ordered: " + book.packs() + " packs");
        List<String> texts = texts(sheet);
        packs.forEach((product, count) -> {
            int at = texts.indexOf(LadderShop.shop().product(product).name());
            assertThat(texts.get(at + 1)).as(product).isEqualTo(count.toString());
        });
        assertThat(texts).noneMatch(text -> text.matches(".*\\d{2} [A-Z]{3} 2026.*"));
        assertThat(shop.sheets.stream().map(Sheet::name).toList())
                .containsExactlyInAnyOrder("fallback", "count", "orders-only");
    }

    @Test
    void it_is_printed_once_however_often_the_plan_is_tried_again() {
        plannerBreaks();
        shop.tickAt(14, 0);
        for (int minute = 0; minute < 60; minute++) shop.tickAt(15, minute);
        assertThat(step(Step.PLAN).attempts()).isGreaterThan(3);
        assertThat(shop.named("orders-only")).hasSize(1);
    }

    @Test
    void a_printer_that_was_off_prints_it_at_a_later_try() {
        plannerBreaks();
        shop.tickAt(14, 0);
        shop.isPrinterOff = true;
        shop.tickAt(15, 0);
        assertThat(step(Step.PLAN).note())
                .startsWith("LAST WEEK, no plan: work from fallback sheet F-261204 (kettle 3 has no number")
                .contains("the printer is off");
        shop.isPrinterOff = false;
        shop.tickAt(15, 2);
        assertThat(shop.named("orders-only")).hasSize(1);
        assertThat(step(Step.PLAN).note()).startsWith("ORDERS ONLY");
    }

    @Test
    void the_steps_and_one_alert_say_the_mode_and_the_sheet_by_its_number() {
        plannerBreaks();
        shop.tickAt(14, 0);
        for (int minute = 0; minute < 30; minute++) shop.tickAt(15, minute);
        assertThat(step(Step.PLAN).state()).isEqualTo(StepRow.State.FAILED);
        assertThat(step(Step.PLAN).note())
                .isEqualTo("ORDERS ONLY, no plan: work from orders-only sheet O-261204, dates by hand from fallback"
                        + " sheet F-261204 (kettle 3 has no number)");
        assertThat(shop.mails).hasSize(1);
        assertThat(shop.mails.get(0).subject()).startsWith("Please look: plan of 2026-12-04 is not done: ORDERS ONLY");
        assertThat(shop.mails.get(0).body().text())
                .contains(
                        "1 thing needs a person by Fri 09:00.",
                        "O-261204",
                        "What is safe: Every order",
                        "By when: Fri 09:00.");
    }

    @Test
    void a_plan_that_comes_after_the_summary_is_told_in_a_second_one_once() {
        plannerBreaks();
        shop.tickAt(14, 0);
        shop.tickAt(15, 0);
        shop.tickAt(30, 30);
        assertThat(summaries()).hasSize(1);
        assertThat(summaries().get(0).id()).isEqualTo("2026-12-04.summary.0");

        shop.planner = PlanDay::of;
        shop.tickAt(31, 10);
        assertThat(step(Step.PLAN).state()).isEqualTo(StepRow.State.DONE);
        for (int minute = 11; minute < 16; minute++) shop.tickAt(31, minute);

        assertThat(summaries()).hasSize(2);
        Mail second = summaries().get(1);
        assertThat(second.id()).isEqualTo("2026-12-04.summary.1");
        assertThat(second.subject()).startsWith("Second summary of Fri 4 Dec");
        assertThat(second.body().text().replaceAll("\\s+", " "))
                .startsWith(
                        "This mail replaces the first summary of the day, which was sent when there was no plan. Work"
                                + " from this one, and delete the first.");
    }

    private List<Mail> summaries() {
        return shop.mails.stream().filter(mail -> mail.id().contains("summary")).toList();
    }

    @Test
    void a_later_plan_prints_the_real_sheets_which_say_first_to_destroy_it() {
        plannerBreaks();
        shop.tickAt(14, 0);
        shop.tickAt(15, 0);
        shop.planner = PlanDay::of;
        shop.tickAt(15, 2);
        assertThat(step(Step.PLAN).state()).isEqualTo(StepRow.State.DONE);
        shop.tickAt(15, 4);
        assertThat(step(Step.SHEETS).state()).isEqualTo(StepRow.State.DONE);
        for (String name : List.of("soak", "run", "pick", "free"))
            assertThat(texts(shop.named(name).get(0)).get(0))
                    .as(name)
                    .isEqualTo("Destroy orders-only sheet O-261204 now, and fallback sheet F-261204 too."
                            + " This sheet takes their place.");
        assertThat(shop.named("orders-only")).hasSize(1);
        assertThat(shop.mails.stream().map(Mail::subject).toList())
                .last()
                .isEqualTo("All clear: the clerk works again by itself");
    }

    @Test
    void a_planner_that_hangs_on_either_way_leaves_the_orders_alone_and_is_not_started_beside_itself() {
        LadderShop quick = new LadderShop(ledger, Duration.ofMillis(200));
        plannerHangs();
        AtomicInteger asked = new AtomicInteger();
        var hangs = shop.planner;
        quick.planner = (any, evening) -> {
            asked.incrementAndGet();
            return hangs.apply(any, evening);
        };
        quick.tickAt(14, 0);
        quick.tickAt(15, 0);
        assertThat(words(quick.named("orders-only").get(0))).contains("No plan came out: the planner took too long.");
        quick.tickAt(15, 2);
        quick.tickAt(15, 10);
        assertThat(asked).as("with search and without, once each").hasValue(2);
        assertThat(step(Step.PLAN).note()).contains("that was begun earlier has not ended yet");
    }

    @Test
    void the_summary_of_a_day_without_a_plan_says_which_mode_it_is_and_what_is_ordered() {
        plannerBreaks();
        shop.tickAt(14, 0);
        shop.tickAt(15, 0);
        shop.tickAt(24 + 6, 30);
        Mail summary = shop.mails.stream()
                .filter(mail -> mail.subject().startsWith("Fri 4 Dec"))
                .findFirst()
                .orElseThrow();
        assertThat(summary.subject()).isEqualTo("Fri 4 Dec: orders only, no plan");
        assertThat(summary.body().text().lines().collect(Collectors.joining(" ")))
                .contains("Work from orders-only sheet O-261204")
                .contains("Ordered");
    }

    /** From now on what the ledger is told with these words in it is refused. */
    private void refuse(String words) {
        LedgerWire.tap(ledger, new LedgerWire.Tap() {
            @Override
            public void before(String sql) throws SQLException {
                if (sql.contains(words)) throw new SQLException("no such table");
            }

            @Override
            public void after(String sql) {}
        });
    }

    @Test
    void where_even_the_orders_cannot_be_read_the_fallback_sheet_of_the_afternoon_stands_and_is_named() {
        shop.tickAt(14, 0);
        refuse("FROM order_line");
        shop.tickAt(15, 0);
        assertThat(shop.sheets.stream().map(Sheet::name).toList()).containsExactlyInAnyOrder("fallback", "count");
        assertThat(step(Step.PLAN).note())
                .startsWith("LAST WEEK, no plan: work from fallback sheet F-261204 (")
                .doesNotContain("not printed either");
        assertThat(shop.mails).hasSize(1);
        assertThat(shop.mails.get(0).body().text()).contains("LAST WEEK", "F-261204");
        shop.tickAt(24 + 6, 30);
        assertThat(shop.mails.stream().map(Mail::subject)).contains("Fri 4 Dec: last week's day, no plan");
    }

    @Test
    void a_book_that_could_not_be_closed_is_printed_as_it_stands_and_says_so() {
        shop.order("C002", "FIRM-400", 43);
        shop.tickAt(14, 0);
        refuse("INTO book_close");
        shop.tickAt(15, 0);
        assertThat(words(shop.named("orders-only").get(0)))
                .contains("The order book was not closed: more orders may come.")
                .contains("Ordered: "
                        + shop.office.book().close(LadderShop.DAY, shop.now).packs() + " packs");
    }

    @Test
    void what_a_computation_throws_comes_out_of_its_box_as_it_is() {
        TimeBox box = new TimeBox("it", LONG, () -> {});
        assertThatThrownBy(() -> box.run(() -> {
                    throw new IllegalArgumentException("this one");
                }))
                .isExactlyInstanceOf(IllegalArgumentException.class)
                .hasMessage("this one");
        assertThat(box.run(() -> 7)).isEqualTo(7);
    }
}
