package dawnkettle.book;

import dawnkettle.shop.Customer;
import dawnkettle.shop.Product;
import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * What a clerk knows when reading a customer's mail.
 *
 * @param products everything the shop sells
 * @param usual codes of what the customer takes by standing order, with the most packs that it ever stood for
 * @param delivers whether the customer's van goes on a day
 * @param names what the customer and the shop are called, which says nothing about an order
 * @param words the word lists, the shop's own language first
 */
public record OrderReading(
        List<Product> products,
        Map<String, Integer> usual,
        Predicate<LocalDate> delivers,
        List<String> names,
        List<OrderWords> words) {
    public OrderReading {
        products = List.copyOf(products);
        usual = Map.copyOf(usual);
        names = List.copyOf(names);
        words = List.copyOf(words);
    }

    public static OrderReading of(Shop shop, Customer customer, List<StandingOrder> standing, List<OrderWords> words) {
        Map<String, Integer> usual = new TreeMap<>();
        for (StandingOrder order : standing)
            if (order.customer().equals(customer.code())) usual.merge(order.product(), order.packs(), Math::max);
        Route route = shop.route(customer.route());
        List<String> names = new ArrayList<>(customer.aliases());
        names.add(customer.name());
        names.add(shop.house().name());
        return new OrderReading(shop.products(), usual, day -> goes(shop, route, day), names, words);
    }

    private static boolean goes(Shop shop, Route route, LocalDate day) {
        return route.days().contains(day.getDayOfWeek())
                && !shop.calendar().withoutVans().contains(day);
    }
}
