package dawnkettle;

import dawnkettle.book.OrderBook;
import dawnkettle.intake.AttachedOrders;
import dawnkettle.mail.Mail;
import dawnkettle.night.MailIn;
import dawnkettle.night.OrderSource;
import dawnkettle.shop.Shop;
import java.time.Instant;

/** A CSV that came along with a mail, read as the drop folder reads it. */
final class AttachedTables implements MailIn.Tables {
    @Override
    public OrderSource.Contents read(Mail.Attachment file, OrderBook book, Shop shop, Instant now) {
        return DroppedOrders.contents(
                AttachedOrders.read(file.name(), file.content().toArray(), book, shop, now));
    }
}
