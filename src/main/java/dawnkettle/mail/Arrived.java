package dawnkettle.mail;

import dawnkettle.mail.Mail.Attachment;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A mail that came in, as plain data.
 *
 * @param place where it lies in the mailbox
 * @param marks by which it is known again wherever it lies
 * @param refused why nothing of its content was read; empty where it was
 */
public record Arrived(Place place, Marks marks, Sender sender, Content content, Optional<String> refused) {
    /**
     * A mail's place in the mailbox (RFC 3501 section 2.3.1.1).
     *
     * @param validity another number says that all places were given anew
     */
    public record Place(long validity, long uid) {}

    /**
     * @param messageId as its sender wrote it; empty where there is none
     * @param sha256 of sender, date, subject and words, in hexadecimal
     */
    public record Marks(String messageId, String sha256) {}

    /**
     * Who it says it is from, and who says so.
     *
     * @param from its one address in small letters; empty where it has none or several
     * @param doubt why the receiving server does not vouch for that address; empty where it does
     * @param to addresses it was sent to, in small letters
     * @param automatic whether a program wrote it, a list passed it on, or nobody is to answer it
     */
    public record Sender(Optional<String> from, Optional<String> doubt, List<String> to, boolean automatic) {
        public Sender {
            to = List.copyOf(to);
        }
    }

    /**
     * @param body plain text, or HTML where there is no plain text
     * @param written the mail's own time
     * @param tables CSV files that came along
     */
    public record Content(String subject, String body, Instant written, List<Attachment> tables) {
        public Content {
            tables = List.copyOf(tables);
        }
    }
}
