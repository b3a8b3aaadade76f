package dawnkettle.shop;

import java.util.List;

/**
 * Somebody who orders.
 *
 * @param aliases what people call them
 * @param mails addresses that may order for them
 * @param stop place in the route's order of stops, from 1
 * @param priority 1 is served first in a shortage, 3 last
 * @param pricesOnNotes whether delivery notes show prices
 */
public record Customer(
        String code,
        String name,
        List<String> aliases,
        List<String> mails,
        String priceList,
        String route,
        int stop,
        int priority,
        boolean pricesOnNotes,
        String address) {
    public Customer {
        aliases = List.copyOf(aliases);
        mails = List.copyOf(mails);
    }
}
