package dawnkettle.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.BookLine;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class AllowancesTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);

    @Test
    void without_history_nothing_is_allowed_for() {
        assertThat(Allowances.of(AnyShop.of(3), FRIDAY, List.of())).isEmpty();
    }

    @Test
    void short_history_is_drawn_towards_nothing_and_other_weekdays_do_not_count() {
        Shop shop = shopWithGoodPrices();
        Product product = worthMaking(shop).orElseThrow();
        List<Allowances.LateDay> history = new ArrayList<>();
        for (int week = 1; week <= 8; week++) {
            history.add(new Allowances.LateDay(product.code(), FRIDAY.minusWeeks(week), 10));
            history.add(new Allowances.LateDay(
                    product.code(), FRIDAY.minusWeeks(week).minusDays(1), 1_000));
        }
        assertThat(Allowances.of(shop, FRIDAY, history))
                .containsExactly(new Evening.Allowance(product.code(), FRIDAY, 5)); // 10 packs x 8 / (8 + 8)
    }

    /** The amount is the product's own: what is dear to make and brings little is allowed for less. */
    @Test
    void a_pack_that_brings_little_is_allowed_for_less() {
        Shop shop = AnyShop.of(3);
        List<Allowances.LateDay> history = new ArrayList<>();
        for (Product product : shop.products())
            for (int week = 1; week <= 20; week++)
                history.add(new Allowances.LateDay(product.code(), FRIDAY.minusWeeks(week), week));
        MakingCost costs = new MakingCost(shop);
        for (Product product : shop.products()) {
            long making = costs.of(product);
            long margin = Math.max(0, product.price().minor() - making);
            double share = (double) margin / (margin + making * 70 / 100);
            int quantile = (int) Math.ceil(20 * share - 1e-9); // of 1 to 20 packs, each once
            int allowed = Allowances.of(shop, FRIDAY, history).stream()
                    .filter(one -> one.product().equals(product.code()))
                    .mapToInt(Evening.Allowance::packs)
                    .sum();
            assertThat(allowed).as(product.code()).isBetween((quantile - 1) * 20 / 28, (quantile + 1) * 20 / 28);
        }
    }

    /** A pack left over that a later delivery asks for is hardly a loss, as long as its days reach. */
    @Test
    void packs_that_later_orders_would_take_are_allowed_for_more_freely() {
        Shop shop = shopWithGoodPrices();
        Product product = worthMaking(shop).orElseThrow();
        List<Allowances.LateDay> history = new ArrayList<>();
        for (int week = 1; week <= 20; week++)
            history.add(new Allowances.LateDay(product.code(), FRIDAY.minusWeeks(week), week == 1 ? 30 : 0));
        int alone = packs(Allowances.of(shop, FRIDAY, history));
        int followed = packs(Allowances.of(shop, FRIDAY, history, List.of(ordered(product, FRIDAY.plusDays(1), 30))));
        int tooLate = packs(Allowances.of(shop, FRIDAY, history, List.of(ordered(product, FRIDAY.plusDays(30), 30))));
        assertThat(followed).isGreaterThan(alone);
        assertThat(tooLate).isEqualTo(alone);
    }

    private static Shop shopWithGoodPrices() {
        return LongStream.range(1, 100)
                .mapToObj(AnyShop::of)
                .filter(shop -> worthMaking(shop).isPresent())
                .findFirst()
                .orElseThrow();
    }

    /** A product that brings twice its making and may be delivered the day after. */
    private static Optional<Product> worthMaking(Shop shop) {
        MakingCost costs = new MakingCost(shop);
        return shop.products().stream()
                .filter(product -> product.price().minor() > 2 * costs.of(product)
                        && product.keeping().lastDelivery(FRIDAY).isAfter(FRIDAY))
                .findFirst();
    }

    private static int packs(List<Evening.Allowance> allowances) {
        return allowances.stream().mapToInt(Evening.Allowance::packs).sum();
    }

    private static BookLine ordered(Product product, LocalDate delivery, int packs) {
        return new BookLine(
                new OrderNumber("O-1"),
                1,
                "C0",
                "V0",
                product.code(),
                packs,
                delivery,
                delivery,
                OrderLine.Source.FILE,
                false);
    }
}
