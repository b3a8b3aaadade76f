package dawnkettle.sheet;

import dawnkettle.measure.Money;
import dawnkettle.plan.Allocation;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;

/** What packs cost a customer on a day: the price of their list, else the everyday price. */
final class NotePrices {
    private static final Lettering FIGURE = Lettering.plain(9.5).aligned(Lettering.Align.RIGHT);
    private static final Lettering SUM = Lettering.bold(10).aligned(Lettering.Align.RIGHT);

    private final Desk desk;
    private final LocalDate on;

    NotePrices(Desk desk, LocalDate on) {
        this.desk = desk;
        this.on = on;
    }

    /** Price of a pack; empty where the shop has the product no more. */
    Optional<Money> price(String customer, String product) {
        Optional<String> list = desk.shop().findCustomer(customer).map(Customer::priceList);
        return desk.shop().prices().stream()
                .filter(one -> one.product().equals(product) && !one.from().isAfter(on))
                .filter(one -> list.filter(one.priceList()::equals).isPresent())
                .max(Comparator.comparing(ListPrice::from))
                .map(ListPrice::price)
                .or(() -> desk.shop().findProduct(product).map(Product::price));
    }

    /** What a pack costs, and below it the line. */
    Cell cell(String customer, Allocation line) {
        Optional<Money> price = price(customer, line.product());
        return Cell.stack(
                new Cell.Phrase(figure(price), FIGURE),
                new Cell.Phrase(figure(price.map(one -> one.times(line.packs()))), SUM));
    }

    private static String figure(Optional<Money> money) {
        return money.map(one -> one.amount().toPlainString()).orElse("?");
    }

    String total(Load.Stop stop) {
        Money sum = Money.zero(desk.shop().house().currency());
        for (Allocation line : stop.lines())
            sum = sum.plus(price(stop.customer(), line.product())
                    .map(one -> one.times(line.packs()))
                    .orElse(Money.zero(sum.currency())));
        return desk.say(
                Word.NOTE_WORTH, sum.amount().toPlainString(), sum.currency().getCurrencyCode());
    }
}
