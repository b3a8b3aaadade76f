package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.cost.MadeDay.Made;
import dawnkettle.cost.MadeDay.Used;
import dawnkettle.mail.Millrace;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class LotPricesTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 11, 23);

    private static MadeDay day(int after, String... litres) {
        List<Made> made = Arrays.stream(litres)
                .map(units -> new Made(
                        "POUCH-10",
                        10,
                        Mass.kilograms(1),
                        Mass.kilograms(1),
                        60,
                        List.of(new Used("OIL", new BigDecimal(units)))))
                .toList();
        Money paid = Money.minor(100, Millrace.USD);
        return new MadeDay(MONDAY.plusDays(after), made, new UnitPrice(paid, Mass.kilograms(1)), Mass.ZERO, 0);
    }

    private static Receipt receipt(String lot, int after, String litres, long cents) {
        return new Receipt(
                "OIL", lot, MONDAY.plusDays(after), new BigDecimal(litres), Money.minor(cents, Millrace.USD));
    }

    private static BigDecimal minor(MadeDay day, int made) {
        return day.made().get(made).used().get(0).minor().orElseThrow();
    }

    /** 20 l at 1.85 and then 20 l at 2.05; 15 l on Monday, 10 l on Tuesday, of which 5 l come from either lot. */
    @Test
    void the_lot_that_came_first_is_used_first_and_a_day_may_take_from_two() {
        List<MadeDay> days = new LotPrices(
                        List.of(receipt("NEW", 1, "20", 4_100), receipt("OLD", -3, "20", 3_700)), List.of())
                .price(List.of(day(0, "15"), day(1, "6", "4")));
        assertThat(minor(days.get(0), 0)).isEqualByComparingTo("2775");
        assertThat(minor(days.get(1), 0)).isEqualByComparingTo("1170");
        assertThat(minor(days.get(1), 1)).isEqualByComparingTo("780");
    }

    @Test
    void a_count_of_the_evening_before_says_what_was_left() {
        List<MadeDay> days = new LotPrices(
                        List.of(receipt("OLD", -3, "20", 3_700), receipt("NEW", -1, "20", 4_100)),
                        List.of(new Receipt.Counted("OIL", "OLD", MONDAY, BigDecimal.ZERO)))
                .price(List.of(day(0, "1"), day(1, "1")));
        assertThat(minor(days.get(0), 0)).isEqualByComparingTo("185");
        assertThat(minor(days.get(1), 0)).isEqualByComparingTo("205");
    }

    @Test
    void more_than_came_in_goes_on_at_the_last_price_and_what_never_came_has_none() {
        List<MadeDay> days =
                new LotPrices(List.of(receipt("OLD", -3, "2", 370)), List.of()).price(List.of(day(0, "5")));
        assertThat(minor(days.get(0), 0)).isEqualByComparingTo("925");
        MadeDay unknown =
                new LotPrices(List.of(), List.of()).price(List.of(day(0, "5"))).get(0);
        assertThat(unknown.made().get(0).used().get(0).minor()).isEmpty();
    }
}
