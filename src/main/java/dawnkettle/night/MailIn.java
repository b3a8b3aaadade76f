package dawnkettle.night;

import dawnkettle.book.OrderBook;
import dawnkettle.book.OrderWords;
import dawnkettle.mail.Mail;
import dawnkettle.mail.Mailbox;
import dawnkettle.shop.Shop;
import java.time.Instant;
import java.util.List;

/**
 * The order mailbox and how its mails are read.
 *
 * @param tables reads CSV that came along
 * @param words the word lists, the shop's own language first
 */
public record MailIn(Mailbox mailbox, OrderMailSettings settings, Tables tables, List<OrderWords> words) {
    public static final MailIn NONE = new MailIn(
            Mailbox.NONE,
            OrderMailSettings.NONE,
            (file, book, shop, now) -> new OrderSource.Contents(List.of(), List.of(), List.of(), List.of(), true),
            List.of());

    public MailIn {
        words = List.copyOf(words);
    }

    /** Reads a CSV as the drop folder does. */
    public interface Tables {
        OrderSource.Contents read(Mail.Attachment file, OrderBook book, Shop shop, Instant now);
    }
}
