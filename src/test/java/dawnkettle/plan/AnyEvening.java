package dawnkettle.plan;

import dawnkettle.book.BookLine;
import dawnkettle.book.ClosedBook;
import dawnkettle.book.OrderLine;
import dawnkettle.book.OrderNumber;
import dawnkettle.floor.Budget;
import dawnkettle.measure.Celsius;
import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Shop;
import dawnkettle.stock.LotCode;
import dawnkettle.stock.StockLot;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** A book, a cold room and a night for a shop that never was. */
public final class AnyEvening {
    private AnyEvening() {}

    public static Evening of(Shop shop, long seed, long decodes) {
        Random dice = new Random(seed * 31 + 7);
        LocalDate day = LocalDate.of(2026, 11, 30).plusDays(dice.nextInt(6));
        Instant now = day.minusDays(1)
                .atTime(LocalTime.of(4 + dice.nextInt(11), 0))
                .atZone(shop.house().zone())
                .toInstant();
        return new Evening(
                new ClosedBook(day, now, lines(shop, day, dice)),
                new Evening.Outlook(List.of(), allowances(shop, day, dice)),
                new Evening.Larder(stock(shop, day, dice), List.of()),
                new Evening.SoakRoom(
                        new Temperatures(
                                Celsius.tenths(80 + dice.nextInt(200)),
                                Celsius.tenths(60 + dice.nextInt(120)),
                                "drawn"),
                        Optional.empty(),
                        List.of()),
                Evening.Committed.NOTHING,
                now,
                new Budget(decodes, seed, 60_000));
    }

    private static List<BookLine> lines(Shop shop, LocalDate day, Random dice) {
        List<BookLine> lines = new ArrayList<>();
        for (Customer customer : shop.customers()) {
            int count = dice.nextInt(4);
            for (int i = 1; i <= count; i++) {
                Product product =
                        shop.products().get(dice.nextInt(shop.products().size()));
                boolean sameDay = shop.route(customer.route()).madeSameDay();
                lines.add(new BookLine(
                        new OrderNumber("O-" + customer.code()),
                        i,
                        customer.code(),
                        customer.route(),
                        product.code(),
                        1 + dice.nextInt(60),
                        sameDay ? day : day.plusDays(1),
                        day,
                        dice.nextBoolean() ? OrderLine.Source.FILE : OrderLine.Source.STANDING,
                        false));
            }
        }
        return lines;
    }

    private static List<Evening.Allowance> allowances(Shop shop, LocalDate day, Random dice) {
        List<Evening.Allowance> allowances = new ArrayList<>();
        for (Product product : shop.products())
            if (dice.nextInt(3) == 0) allowances.add(new Evening.Allowance(product.code(), day, 1 + dice.nextInt(10)));
        return allowances;
    }

    private static List<StockLot> stock(Shop shop, LocalDate day, Random dice) {
        List<StockLot> stock = new ArrayList<>();
        for (Product product : shop.products())
            if (dice.nextInt(3) == 0) {
                LocalDate packed = day.minusDays(1 + dice.nextInt(3));
                stock.add(new StockLot(
                        LotCode.of(packed, shop.recipeOf(product).mark(), 1),
                        product.code(),
                        1 + dice.nextInt(30),
                        packed,
                        product.keeping().bestBefore(packed),
                        dice.nextBoolean()));
            }
        return stock;
    }
}
