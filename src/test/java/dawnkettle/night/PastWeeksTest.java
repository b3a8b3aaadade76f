package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.book.Amendment;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.book.SmallShop;
import dawnkettle.cost.MadeDay;
import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.UnitPrice;
import dawnkettle.measure.Celsius;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.plan.Allowances.LateDay;
import dawnkettle.plan.DayPlan;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import dawnkettle.store.Ledger;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PastWeeksTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 11, 27);
    private static final LocalDate NEXT_FRIDAY = FRIDAY.plusWeeks(1);
    private static final Instant CUT_OFF = Instant.parse("2026-12-03T20:00:00Z");

    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    /**
     * By hand from {@code conf/}: 30 kg of beans become 72.0 kg of thin firm, of which 71.2 kg are fried to 34.0 kg and
     * packed as 15 and 18 kg. Thin firm binds 54 minutes of hands a batch, fried pouches 54 more. Friday's making goes
     * with four vans that day and two early ones on Saturday.
     */
    @Test
    void a_recorded_day_carries_beans_work_and_materials_through_what_was_made_of_what() {
        Shop shop = new DemoDay(FRIDAY).conf.shop();
        record(
                received("BEAN-YEL", "OLD", 300, 28_500),
                received("BEAN-YEL", "NEW", 300, 33_000),
                new Fact.Soaked(FRIDAY, "T01", "OLD", Mass.kilograms(20)),
                new Fact.Soaked(FRIDAY, "T01", "NEW", Mass.kilograms(10)),
                new Fact.Yielded(new LotCode("261127-TF01"), "thinfirm", Mass.kilograms(30), Mass.kilograms(72)),
                new Fact.Yielded(new LotCode("261127-FP01"), "pouch", Mass.grams(71_200), Mass.kilograms(34)),
                new Fact.Packed(new LotCode("261127-FP01"), "FRY-150", 100),
                new Fact.Packed(new LotCode("261127-FP01"), "FRY-KIT", 18));

        List<MadeDay> days = new PastWeeks(ledger, shop).madeDays();

        assertThat(days).hasSize(1);
        MadeDay day = days.get(0);
        assertThat(day.date()).isEqualTo(FRIDAY);
        assertThat(day.beans())
                .isEqualTo(new UnitPrice(Money.minor(3_000, shop.house().currency()), Mass.kilograms(30)));
        assertThat(day.water()).isEqualTo(Mass.kilograms(30 * 9 + 30 * 3));
        assertThat(day.routes()).isEqualTo(6);
        assertThat(day.made()).extracting(Made::product).containsExactly("FRY-150", "FRY-KIT");
        assertThat(day.made()).extracting(Made::mass).containsExactly(Mass.kilograms(15), Mass.kilograms(18));
        assertThat(day.made().get(0).beans()).isEqualTo(Mass.milligrams(13_636_364)); // 15/33, the larger remainder
        assertThat(Mass.sum(day.made().stream().map(Made::beans).toList())).isEqualTo(Mass.kilograms(30));
        assertThat(day.made().stream().mapToLong(Made::handSeconds).sum()).isEqualTo((54 + 54) * 60);
        assertThat(used(day, "OIL")).isEqualByComparingTo("4.08");
    }

    @Test
    void soaked_beans_that_no_batch_took_are_borne_by_what_was_made() {
        record(
                new Fact.Soaked(FRIDAY, "T1", "B-1", Mass.kilograms(10)),
                new Fact.Yielded(new LotCode("261127-FI01"), "firm", Mass.kilograms(8), Mass.kilograms(19)),
                new Fact.Packed(new LotCode("261127-FI01"), "FIRM-12", 50));
        Shop shop = new DemoDay(FRIDAY).conf.shop();
        record(new Fact.Packed(new LotCode("261127-FI01"), "FIRM-400", 40));

        Made made = new PastWeeks(ledger, shop).madeDays().get(0).made().get(0);
        assertThat(made.product()).as("the other is no product of this shop").isEqualTo("FIRM-400");
        assertThat(made.beans()).isEqualTo(Mass.kilograms(10));
    }

    @Test
    void the_last_record_of_a_batch_counts() {
        LotCode lot = new LotCode("261127-FI01");
        record(
                new Fact.Yielded(lot, "firm", Mass.kilograms(30), Mass.kilograms(7)),
                new Fact.Packed(lot, "FIRM-400", 100),
                new Fact.Yielded(lot, "firm", Mass.kilograms(25), Mass.kilograms(70)),
                new Fact.Packed(lot, "FIRM-400", 120));

        Made made = new PastWeeks(ledger, new DemoDay(FRIDAY).conf.shop())
                .madeDays()
                .get(0)
                .made()
                .get(0);
        assertThat(made.packs()).isEqualTo(120);
        assertThat(made.beans()).isEqualTo(Mass.kilograms(25));
    }

    @Test
    void a_day_that_nobody_wrote_down_counts_as_planned() {
        DemoDay demo = new DemoDay(NEXT_FRIDAY);
        DayPlan plan = demo.plan(Celsius.degrees(25), 0);
        ledger.plans().keep(plan, "{}");
        record(new Fact.Packed(new LotCode("261127-FI01"), "FIRM-400", 100));
        Shop shop = demo.conf.shop();

        assertThat(new PastWeeks(ledger, shop, always(plan)).madeDays())
                .containsExactly(MadeDay.of(plan, shop, Map.of()));
        assertThat(new PastWeeks(ledger, shop, always(plan)).madeDays(FRIDAY, NEXT_FRIDAY))
                .isEmpty();
        assertThat(new PastWeeks(ledger, shop).madeDays()).isEmpty();
    }

    /** One line grows from 10 to 13 packs after the close, one of 6 is new, one of 5 is cancelled. */
    @Test
    void what_came_late_is_what_the_book_has_more_than_its_close() {
        ledger.orders().add(List.of(line("A1", "FIRM-12", 10), line("A2", "SOFT-6", 5)));
        ledger.closes().close(ledger.book(SmallShop.open(), List.of(), FRIDAY).close(NEXT_FRIDAY, CUT_OFF));
        ledger.orders().add(List.of(line("A3", "SOFT-6", 6)));
        ledger.orders().amend(List.of(amended("A1", 13), amended("A2", 0)));
        record(new Fact.CameLate("SOFT-6", FRIDAY, 2), new Fact.CameLate("SOFT-6", FRIDAY, 1));

        assertThat(new PastWeeks(ledger, SmallShop.open()).lateDays())
                .containsExactly(
                        new LateDay("FIRM-12", FRIDAY, 0),
                        new LateDay("SOFT-6", FRIDAY, 3),
                        new LateDay("FRIED-8", FRIDAY, 0),
                        new LateDay("FIRM-12", NEXT_FRIDAY, 3),
                        new LateDay("SOFT-6", NEXT_FRIDAY, 1),
                        new LateDay("FRIED-8", NEXT_FRIDAY, 0));
    }

    private static PlanForm always(DayPlan plan) {
        return new PlanForm() {
            @Override
            public String write(DayPlan any) {
                return "{}";
            }

            @Override
            public DayPlan read(String text) {
                return plan;
            }
        };
    }

    private static BigDecimal used(MadeDay day, String material) {
        return day.made().stream()
                .flatMap(made -> made.used().stream())
                .filter(used -> used.material().equals(material))
                .map(MadeDay.Used::units)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static Fact received(String material, String lot, long kilograms, long cents) {
        return new Fact.Received(
                material, lot, Quantity.of(Mass.kilograms(kilograms)), Money.minor(cents, SmallShop.DOLLARS));
    }

    private void record(Fact... facts) {
        int before = ledger.records().all(Fact.Kind.values()).size();
        for (int i = 0; i < facts.length; i++) {
            Instant at = CUT_OFF.plusSeconds(before + i);
            ledger.records().add(new Recorded(facts[i], at, at, "mail " + (before + i)));
        }
    }

    private static OrderLine line(String order, String product, int packs) {
        return new OrderLine(
                new OrderNumber(order),
                1,
                "MILL",
                product,
                packs,
                NEXT_FRIDAY,
                OrderLine.Source.FILE,
                "orders.csv:2:1",
                CUT_OFF.minusSeconds(3600));
    }

    private static Amendment amended(String order, int packs) {
        return new Amendment(
                new OrderNumber(order), 1, packs, OrderLine.Source.MAIL, "mail", CUT_OFF.plusSeconds(60), true);
    }
}
