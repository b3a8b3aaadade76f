package dawnkettle.intake;

import dawnkettle.book.OrderBook;
import dawnkettle.shop.Shop;
import java.time.Instant;

/** Orders as CSV that came along with a mail, read as a dropped file is. */
public final class AttachedOrders {
    private AttachedOrders() {}

    public static Reading read(String name, byte[] bytes, OrderBook book, Shop shop, Instant now) {
        return new ReadOrders(shop, book, now).read(OrderTable.read(name, bytes));
    }
}
