package dawnkettle.store;

import static dawnkettle.store.KeptNight.CUT_OFF;
import static dawnkettle.store.KeptNight.FRIDAY;
import static dawnkettle.store.KeptNight.LOT;
import static dawnkettle.store.KeptNight.THURSDAY;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.SmallShop;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Shop;
import dawnkettle.stock.BeanLot;
import dawnkettle.stock.Fact;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.Quantity;
import dawnkettle.stock.Recorded;
import dawnkettle.stock.StockLot;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The night of {@link KeptNight}: 30 packs made on Thursday, 24 promised for Friday, six kilograms of beans used. */
class StockRowsTest {
    private static final LocalDate BEST_BEFORE = THURSDAY.plusDays(9);

    /** 15:00 on Thursday in the shop's zone. */
    private static final Instant AFTERNOON = Instant.parse("2026-12-03T20:00:00Z");

    @TempDir
    Path folder;

    private final Shop shop = SmallShop.open();
    private Ledger ledger;
    private int line;

    @BeforeEach
    void keepANight() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        KeptNight.fill(ledger);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    @Test
    void what_was_made_and_not_promised_is_expected_in_the_cold_room() {
        assertThat(stock(FRIDAY)).containsExactly(lot(6, true));
    }

    @Test
    void the_days_own_plan_is_left_out_so_that_a_revision_starts_from_the_same_stock() {
        assertThat(stock(THURSDAY)).isEmpty();
    }

    @Test
    void what_was_sold_or_lost_is_gone() {
        record(new Fact.Sold(LOT, "FIRM-12", 1), AFTERNOON);
        record(new Fact.LostPacks(LOT, "FIRM-12", 2, "torn"), AFTERNOON);

        assertThat(stock(FRIDAY)).containsExactly(lot(3, true));
    }

    @Test
    void a_count_takes_the_place_of_all_before_it_less_what_is_promised_for_later_days() {
        record(new Fact.Sold(LOT, "FIRM-12", 1), AFTERNOON.minusSeconds(600));
        record(new Fact.CountedPacks(LOT, "FIRM-12", 28, Optional.empty()), AFTERNOON);
        assertThat(stock(FRIDAY)).containsExactly(lot(4, false));

        record(new Fact.Sold(LOT, "FIRM-12", 3), AFTERNOON.plusSeconds(600));
        assertThat(stock(FRIDAY)).containsExactly(lot(1, false));
    }

    @Test
    void a_count_made_after_the_vans_left_holds_nothing_promised_any_more() {
        record(new Fact.CountedPacks(LOT, "FIRM-12", 5, Optional.empty()), AFTERNOON.plusSeconds(86_400));

        assertThat(stock(FRIDAY.plusDays(1))).containsExactly(lot(5, false));
        assertThat(stock(FRIDAY.plusDays(3)))
                .as("Monday's plan follows Saturday's making; the count is of Friday")
                .containsExactly(lot(5, true));
    }

    @Test
    void a_lot_that_is_lost_or_past_its_date_is_not_stock() {
        assertThat(stock(BEST_BEFORE)).containsExactly(lot(6, true));
        assertThat(stock(BEST_BEFORE.plusDays(2))).isEmpty();
        record(new Fact.LostBatch(LOT, "scorched"), AFTERNOON);
        assertThat(stock(FRIDAY)).isEmpty();
    }

    @Test
    void stock_of_the_first_day_is_counted_in_with_its_dates() {
        LotCode old = new LotCode("261202-SO01");
        record(
                new Fact.CountedPacks(
                        old, "SOFT-6", 9, Optional.of(new Fact.Dating(THURSDAY.minusDays(1), FRIDAY.plusDays(1)))),
                AFTERNOON);

        assertThat(stock(FRIDAY))
                .as("first expired first")
                .containsExactly(
                        new StockLot(old, "SOFT-6", 9, THURSDAY.minusDays(1), FRIDAY.plusDays(1), false), lot(6, true));
    }

    @Test
    void beans_go_down_by_the_tubs_of_the_plan_the_first_lot_first() {
        receive("BEANS-1", 4, 10);
        receive("BEANS-2", 50, 3);

        assertThat(beans(FRIDAY, CUT_OFF.plusSeconds(90_000)))
                .as("a tub of six kilograms took all of the first lot and two kilograms of the second")
                .containsExactly(new BeanLot("BEANS-2", "BEANS", Mass.kilograms(48), receivedOn(3)));
    }

    @Test
    void tubs_as_written_down_take_the_place_of_the_plan() {
        receive("BEANS-1", 4, 10);
        receive("BEANS-2", 50, 3);
        record(new Fact.Soaked(THURSDAY, "T1", "BEANS-2", Mass.kilograms(5)), CUT_OFF);

        assertThat(beans(FRIDAY, CUT_OFF.plusSeconds(90_000)))
                .extracting(BeanLot::left)
                .containsExactly(Mass.kilograms(4), Mass.kilograms(45));
    }

    @Test
    void the_days_own_soak_call_is_taken_off_and_no_more_than_once() {
        receive("BEANS-1", 10, 10);

        assertThat(beans(THURSDAY, CUT_OFF.minusSeconds(7000)))
                .extracting(BeanLot::left)
                .containsExactly(Mass.kilograms(4));
        assertThat(beans(THURSDAY.minusDays(1), CUT_OFF.minusSeconds(7000)))
                .extracting(BeanLot::left)
                .containsExactly(Mass.kilograms(10));
    }

    @Test
    void a_scale_is_believed_over_the_sum_and_coagulant_goes_down_by_the_batches() {
        receive("BEANS-1", 10, 10);
        record(new Fact.CountedMaterial("BEANS", "BEANS-1", Quantity.of(Mass.grams(3_700))), CUT_OFF.plusSeconds(60));
        record(
                new Fact.Received("NIGARI", "NIG-1", Quantity.of(Mass.grams(1_000)), Money.zero(SmallShop.DOLLARS)),
                CUT_OFF.minusSeconds(864_000));

        assertThat(beans(FRIDAY, CUT_OFF.plusSeconds(90_000)))
                .extracting(BeanLot::lot, BeanLot::left)
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple("BEANS-1", Mass.grams(3_700)),
                        org.assertj.core.groups.Tuple.tuple("NIG-1", Mass.grams(910)));
    }

    private List<StockLot> stock(LocalDate productionDate) {
        return ledger.stock().finished(shop, productionDate);
    }

    private List<BeanLot> beans(LocalDate productionDate, Instant now) {
        return ledger.stock().beans(shop, productionDate, now);
    }

    private void receive(String lot, int kilograms, int daysBefore) {
        record(
                new Fact.Received(
                        "BEANS", lot, Quantity.of(Mass.kilograms(kilograms)), Money.minor(1, SmallShop.DOLLARS)),
                CUT_OFF.minusSeconds(86_400L * daysBefore));
    }

    private static LocalDate receivedOn(int daysBefore) {
        return LocalDate.of(2026, 12, 2).minusDays(daysBefore);
    }

    private void record(Fact fact, Instant at) {
        ledger.records().add(new Recorded(fact, at, at, "sheet:" + ++line));
    }

    private static StockLot lot(int packs, boolean expected) {
        return new StockLot(LOT, "FIRM-12", packs, THURSDAY, BEST_BEFORE, expected);
    }
}
