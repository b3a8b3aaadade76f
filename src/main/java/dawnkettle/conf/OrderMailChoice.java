package dawnkettle.conf;

import dawnkettle.book.OrderWords;
import dawnkettle.night.OrderMailSettings;
import dawnkettle.post.MailboxSettings;
import java.util.List;
import java.util.Optional;

/**
 * The order mailbox, and whose mails in it count.
 *
 * @param words the lists of words by which free text is read
 * @param address at which people write to it; empty where its user is no address and none is named
 */
public record OrderMailChoice(
        MailboxSettings box, OrderMailSettings rules, List<OrderWords> words, Optional<String> address) {
    public OrderMailChoice {
        words = List.copyOf(words);
    }
}
