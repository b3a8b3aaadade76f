package dawnkettle.cost;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.DemoDay;
import dawnkettle.conf.ReadConfiguration;
import dawnkettle.measure.Mass;
import dawnkettle.measure.Money;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.MaterialBook;
import dawnkettle.stock.MaterialBook.Cause;
import dawnkettle.stock.MaterialBook.Use;
import dawnkettle.stock.Quantity;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Nigari in the demonstration shop: drums of 25 kg at 41.00, ten days to come, the owner's own level 50 kg. */
class PurchaseAdviceTest {
    private static final Shop SHOP = ReadConfiguration.from(DemoDay.CONF).shop();
    private static final LocalDate TODAY = LocalDate.of(2026, 12, 4);

    private static Instant noon(LocalDate day) {
        return day.atTime(12, 0).atZone(SHOP.house().zone()).toInstant();
    }

    private static MaterialBook nigari(long kilograms) {
        MaterialBook book = new MaterialBook();
        LocalDate day = TODAY.minusDays(60);
        book.came(
                noon(day),
                day,
                new Fact.Received(
                        "NIGARI",
                        "N-1",
                        Quantity.of(Mass.kilograms(kilograms)),
                        Money.minor(1, SHOP.house().currency())));
        return book;
    }

    private static PurchaseAdvice.Line line(MaterialBook book, Buying buying) {
        return new PurchaseAdvice(SHOP, book.played(), buying, TODAY).lines().get(0);
    }

    /** 56 days of 6 kg: 336 used of 600, 264 left; 60 kg over the lead time, so 204 kg or 34 days until then; by hand. */
    @Test
    void an_even_use_needs_no_safety_and_tells_the_day() {
        MaterialBook book = nigari(600);
        for (int i = 1; i <= 56; i++)
            book.take(List.of("N-1"), new Use(noon(TODAY.minusDays(i)), Cause.DOSED, "261203-FI01", 6_000_000));

        assertThat(line(book, Buying.USUAL).said())
                .isEqualTo("Nigari: magnesium chloride hexahydrate, flakes: 264 kg left; order 4 x 25 kg by 2027-01-07"
                        + " (6.0 a day used, 10 days to come, 0.0 for safety)");
    }

    /** 5 and 7 kg in turn: variance 56/55, deviation 1.009; 1.645 x 1.009 x sqrt(10) = 5.25 kg (by hand). */
    @Test
    void an_uneven_use_keeps_a_safety_stock() {
        MaterialBook book = nigari(600);
        for (int i = 1; i <= 56; i++)
            book.take(
                    List.of("N-1"),
                    new Use(noon(TODAY.minusDays(i)), Cause.DOSED, "261203-FI01", i % 2 == 0 ? 5_000_000 : 7_000_000));

        PurchaseAdvice.Line line = line(book, Buying.USUAL);
        assertThat(line.safety().doubleValue()).isCloseTo(5.25, org.assertj.core.api.Assertions.within(0.005));
        assertThat(line.point().doubleValue()).isCloseTo(65.25, org.assertj.core.api.Assertions.within(0.005));
    }

    /** sqrt(2 x 2190 kg x 3500 / (164 x 0.2)) = 683.6 kg a year's economic lot, but never more than 90 days: 540 kg. */
    @Test
    void an_order_has_the_economic_size_but_lasts_no_longer_than_the_goods() {
        MaterialBook book = nigari(600);
        for (int i = 1; i <= 56; i++)
            book.take(List.of("N-1"), new Use(noon(TODAY.minusDays(i)), Cause.DOSED, "261203-FI01", 6_000_000));
        Optional<Money> freight = Optional.of(Money.minor(3_500, SHOP.house().currency()));

        assertThat(line(book, new Buying(freight, 20, 14, 365)).packs()).isEqualTo(28);
        assertThat(line(book, new Buying(freight, 20, 14, 90)).packs()).isEqualTo(22);
    }

    @Test
    void without_any_use_the_owners_own_level_counts() {
        assertThat(line(nigari(40), Buying.USUAL).said())
                .isEqualTo(
                        "Nigari: magnesium chloride hexahydrate, flakes: 40 kg left; order 1 x 25 kg by 2026-12-04 (no"
                                + " use written down, your own level is 50)");
        assertThat(line(nigari(60), Buying.USUAL).said()).contains("nothing to order");
    }
}
