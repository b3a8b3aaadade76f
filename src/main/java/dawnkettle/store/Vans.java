package dawnkettle.store;

import dawnkettle.shop.Route;
import dawnkettle.shop.Shop;
import dawnkettle.stock.Fact;
import dawnkettle.stock.Recorded;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.HashMap;
import java.util.Map;

/** When each van left: when it was written down as loaded, else when its route leaves. */
final class Vans {
    private final Shop shop;
    private final Map<String, Instant> left = new HashMap<>();

    Vans(Sql sql, Shop shop) {
        this.shop = shop;
        for (Recorded one : new RecordRows(sql).all(Fact.Kind.LOADED)) {
            Fact.Loaded van = (Fact.Loaded) one.fact();
            left.put(key(van.route(), van.deliveryDate()), one.happenedAt());
        }
    }

    private static String key(String route, LocalDate day) {
        return day + " " + route;
    }

    /** By a route that is no more, at noon. */
    Instant left(String route, LocalDate day) {
        return left.computeIfAbsent(key(route, day), any -> planned(route, day));
    }

    private Instant planned(String route, LocalDate day) {
        LocalTime time = shop.routes().stream()
                .filter(one -> one.code().equals(route))
                .map(Route::departs)
                .findFirst()
                .orElse(LocalTime.NOON);
        return day.atTime(time).atZone(shop.house().zone()).toInstant();
    }
}
