package dawnkettle.night;

import dawnkettle.book.Conflict;
import dawnkettle.book.OrderBook;
import dawnkettle.intake.AttachedOrders;
import dawnkettle.intake.Reading;
import dawnkettle.mail.Mail;
import dawnkettle.shop.Shop;
import java.time.Instant;

/** A CSV that came along, read as the service reads it. */
final class Attached {
    private Attached() {}

    static OrderSource.Contents read(Mail.Attachment file, OrderBook book, Shop shop, Instant now) {
        Reading reading = AttachedOrders.read(file.name(), file.content().toArray(), book, shop, now);
        return new OrderSource.Contents(
                reading.lines(),
                reading.amendments(),
                reading.conflicts().stream().map(Conflict::other).toList(),
                reading.problems(),
                reading.isRefused());
    }
}
