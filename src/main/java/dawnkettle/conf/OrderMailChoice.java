package dawnkettle.conf;

import dawnkettle.book.OrderWords;
import dawnkettle.night.OrderMailSettings;
import dawnkettle.post.MailboxSettings;
import java.util.List;

/**
 * The order mailbox, and whose mails in it count.
 *
 * @param words the lists of words by which free text is read
 */
public record OrderMailChoice(MailboxSettings box, OrderMailSettings rules, List<OrderWords> words) {
    public OrderMailChoice {
        words = List.copyOf(words);
    }
}
