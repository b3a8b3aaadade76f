package dawnkettle.conf;

import dawnkettle.night.OrderMailSettings;
import dawnkettle.post.MailboxSettings;

/** The order mailbox, and whose mails in it count. */
public record OrderMailChoice(MailboxSettings box, OrderMailSettings rules) {}
