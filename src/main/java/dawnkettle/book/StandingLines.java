package dawnkettle.book;

import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Standing orders written out as lines of the days they are delivered.
 *
 * <p>The number is {@code S-<customer>-<yyyyMMdd of delivery>}; the line is the product's place in the owner's list, so
 * that it stays the same whatever else the customer takes. A number that a line of the book already holds for another
 * product (the owner's list was re-ordered) is passed over.
 */
final class StandingLines {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT);
    private static final String ORIGIN = "standing order";

    private final Shop shop;
    private final List<StandingOrder> standing;
    private final MakingDates dates;
    private final Set<Wish> held = new HashSet<>();
    private final Map<OrderNumber, Set<Integer>> numbersHeld = new LinkedHashMap<>();

    /** What a standing order wants: one product for one customer on one day. */
    private record Wish(String customer, String product, LocalDate delivery) {}

    /** @param written standing lines that the book holds already, by amendment or by a close */
    StandingLines(Shop shop, List<StandingOrder> standing, List<OrderLine> written) {
        this.shop = shop;
        this.standing = standing;
        this.dates = new MakingDates(shop.calendar());
        for (OrderLine line : written) {
            held.add(new Wish(line.customer(), line.product(), line.deliveryDate()));
            numbersHeld.computeIfAbsent(line.order(), number -> new HashSet<>()).add(line.line());
        }
    }

    /** Those made on a day that the book does not hold yet. */
    List<OrderLine> madeOn(LocalDate productionDate) {
        Map<Wish, Integer> packs = new LinkedHashMap<>();
        for (StandingOrder order : standing) {
            Product product = shop.product(order.product());
            for (LocalDate delivery : dates.deliveryDates(productionDate, route(order.customer()), product))
                if (order.holdsOn(delivery))
                    packs.merge(new Wish(order.customer(), order.product(), delivery), order.packs(), Math::addExact);
        }
        return written(packs);
    }

    /** Those delivered to a customer on a day that the book does not hold yet. */
    List<OrderLine> deliveredTo(Customer customer, LocalDate delivery) {
        Map<Wish, Integer> packs = new LinkedHashMap<>();
        for (StandingOrder order : standing)
            if (order.customer().equals(customer.code()) && order.holdsOn(delivery))
                packs.merge(new Wish(order.customer(), order.product(), delivery), order.packs(), Math::addExact);
        packs.keySet()
                .removeIf(wish -> dates.makingDate(delivery, route(customer.code()), shop.product(wish.product()))
                        .isEmpty());
        return written(packs);
    }

    static OrderNumber number(String customer, LocalDate delivery) {
        return new OrderNumber("S-" + customer + "-" + DAY.format(delivery));
    }

    private List<OrderLine> written(Map<Wish, Integer> packs) {
        List<OrderLine> lines = new ArrayList<>();
        packs.forEach((wish, count) -> {
            if (count > 0 && !held.contains(wish)) lines.add(line(wish, count));
        });
        return lines;
    }

    private OrderLine line(Wish wish, int packs) {
        OrderNumber number = number(wish.customer(), wish.delivery());
        int line = 1 + shop.products().indexOf(shop.product(wish.product()));
        while (numbersHeld.getOrDefault(number, Set.of()).contains(line))
            line += shop.products().size();
        return new OrderLine(
                number,
                line,
                wish.customer(),
                wish.product(),
                packs,
                wish.delivery(),
                OrderLine.Source.STANDING,
                ORIGIN,
                Instant.EPOCH);
    }

    private Route route(String customer) {
        return shop.route(shop.customer(customer).route());
    }
}
