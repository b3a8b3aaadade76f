package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dawnkettle.DemoDay;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Share;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact.Yielded;
import dawnkettle.stock.LotCode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class YieldsTest {
    /** Its firm tofu is written down with 2.56 kg a kg and a spread of 0.08. */
    private static final Shop SHOP = new DemoDay(LocalDate.of(2026, 12, 4)).conf.shop();

    private static List<Yielded> batches(int count, double mean) {
        Random chance = new Random(7);
        List<Yielded> batches = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String lot = String.format(Locale.ROOT, "26%02d%02d-FI01", 1 + i / 28, 1 + i % 28);
            long grams = Math.round(30_000 * (mean + 0.08 * chance.nextGaussian()));
            batches.add(new Yielded(new LotCode(lot), "firm", Mass.kilograms(30), Mass.grams(grams)));
        }
        return batches;
    }

    private static YieldEstimate firm(List<Yielded> records) {
        return Yields.of(SHOP, records).estimates().stream()
                .filter(one -> one.recipe().code().equals("firm"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void without_records_and_with_usual_ones_the_written_yield_holds() {
        assertThat(firm(List.of()).isMoved()).isFalse();
        assertThat(firm(batches(200, 2.56)).isMoved()).isFalse();
        assertThat(Yields.of(SHOP, batches(200, 2.56)).in(SHOP)).isSameAs(SHOP);
        assertThat(Yields.of(SHOP, batches(200, 2.56)).sentences()).isEmpty();
    }

    /** 20 written batches beside 60 recorded ones: three quarters of the way of 4 %. */
    @Test
    void a_yield_that_fell_by_four_percent_is_counted_with_three_quarters_of_it() {
        YieldEstimate firm = firm(batches(100, 2.56 * 0.96));
        assertThat(firm.batches()).isEqualTo(60);
        assertThat(firm.counted().asDecimal().doubleValue()).isCloseTo(2.56 * 0.97, within(0.02));
        assertThat(Yields.of(SHOP, batches(100, 2.56 * 0.96)).sentences())
                .containsExactly("Firm tofu is counted with " + firm.counted()
                        + " kg a kg, not the 2.56 of the recipe: that is what its last 60 recorded batches say.");
    }

    @Test
    void one_odd_batch_moves_nothing_and_a_slip_of_the_pen_counts_as_four_spreads() {
        List<Yielded> odd = new ArrayList<>(batches(59, 2.56));
        odd.add(new Yielded(new LotCode("261130-FI01"), "firm", Mass.kilograms(3), Mass.kilograms(77)));
        assertThat(firm(odd).isMoved()).isFalse();
    }

    @Test
    void it_never_moves_more_than_fifteen_percent_and_of_a_lot_the_last_record_counts() {
        List<Yielded> twice = new ArrayList<>(batches(60, 1.0));
        assertThat(firm(twice).counted()).isGreaterThanOrEqualTo(Share.of("2.176"));
        twice.addAll(batches(60, 2.56));
        assertThat(firm(twice).isMoved()).isFalse();
    }

    @Test
    void the_next_plan_expects_what_the_records_say() {
        Shop counted = Yields.of(SHOP, batches(100, 2.56 * 0.96)).in(SHOP);
        Mass written = Brew.expected(SHOP.recipe("firm"), Mass.kilograms(30));
        Mass expected = Brew.expected(counted.recipe("firm"), Mass.kilograms(30));
        assertThat(expected.milligrams() / (double) written.milligrams()).isCloseTo(0.97, within(0.008));
        assertThat(counted.recipe("medium")).isEqualTo(SHOP.recipe("medium"));
    }
}
