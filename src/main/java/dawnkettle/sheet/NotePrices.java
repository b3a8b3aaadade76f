package dawnkettle.sheet;

import dawnkettle.measure.Money;
import dawnkettle.plan.Allocation;
import dawnkettle.shop.Customer;
import dawnkettle.shop.ListPrice;
import dawnkettle.shop.Product;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What packs cost a customer on a day: the price of their list, else the everyday price. */
final class NotePrices {
    private static final Lettering FIGURE = Lettering.plain(10.5).aligned(Lettering.Align.RIGHT);

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

    List<Cell> cells(String customer, Allocation line) {
        Optional<Money> price = price(customer, line.product());
        return List.of(figure(price), figure(price.map(one -> one.times(line.packs()))));
    }

    private static Cell figure(Optional<Money> money) {
        return Cell.text(money.map(one -> one.amount().toPlainString()).orElse("?"), FIGURE);
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
