package dawnkettle.mail;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A mail that the shop sends, as plain data.
 *
 * @param id the same for the same report of the same day and revision, however often it is sent, as "2026-12-04.summary.1"
 */
public record Mail(String id, Envelope envelope, String subject, Body body, List<Attachment> attachments) {
    private static final String NAME = "[A-Za-z0-9][A-Za-z0-9._-]{0,80}";

    /** A brackets-and-all message id (RFC 5322, 3.6.4), no longer than any program writes one. */
    private static final String MESSAGE_ID = "<[!-;=?-~]{1,250}>";

    public Mail {
        attachments = List.copyOf(attachments);
        if (!id.matches("[A-Za-z0-9_-]+(\\.[A-Za-z0-9_-]+)*"))
            throw new IllegalArgumentException("mail id \"" + id + "\" is not words joined by dots");
    }

    /** A mail that answers none. */
    public Mail(String id, List<String> to, String subject, Body body, List<Attachment> attachments) {
        this(id, new Envelope(to, Optional.empty()), subject, body, attachments);
    }

    /**
     * Whom it goes to, and why.
     *
     * @param to addresses; may be empty where it only goes to the out-tray
     * @param answers Message-ID of the mail that it answers
     */
    public record Envelope(List<String> to, Optional<String> answers) {
        public Envelope {
            to = List.copyOf(to);
        }
    }

    /** The id of a report of a day. */
    public static String idOf(LocalDate day, String report, int revision) {
        return day + "." + report + "." + revision;
    }

    /**
     * What is read: plain text that is complete in itself, and the same as HTML.
     *
     * @param pictures pictures that the HTML shows, by their {@link Picture#cid}
     */
    public record Body(String text, String html, List<Picture> pictures) {
        public Body {
            pictures = List.copyOf(pictures);
        }
    }

    /**
     * A picture inside the HTML.
     *
     * @param name as a file name without its ending
     * @param alternative what it shows, in words
     */
    public record Picture(String name, Bytes png, String alternative) {
        public Picture {
            if (!name.matches(NAME))
                throw new IllegalArgumentException("picture name \"" + name + "\" is no file name");
        }

        /** The name by which the HTML of the mail {@code id} refers to it, without brackets. */
        public String cid(String id) {
            return name + "@" + id;
        }
    }

    /** A file that goes along. */
    public record Attachment(String name, String mediaType, Bytes content) {
        public Attachment {
            if (!name.matches(NAME))
                throw new IllegalArgumentException("attachment \"" + name + "\" is no plain file name");
            if (!mediaType.matches("[a-z]+/[a-z0-9.+-]+(; ?[a-z]+=[a-z0-9-]+)*"))
                throw new IllegalArgumentException("media type \"" + mediaType + "\" is not like text/csv");
        }
    }

    public List<String> to() {
        return envelope.to();
    }

    public Mail addressedTo(List<String> addresses) {
        return new Mail(id, new Envelope(addresses, envelope.answers()), subject, body, attachments);
    }

    /** The same mail as an answer; what is no Message-ID is left out. */
    public Mail answering(String messageId) {
        Optional<String> answers = Optional.of(messageId.strip()).filter(one -> one.matches(MESSAGE_ID));
        return new Mail(id, new Envelope(to(), answers), subject, body, attachments);
    }

    public Mail with(Attachment attachment) {
        List<Attachment> all = new ArrayList<>(attachments);
        all.add(attachment);
        return new Mail(id, envelope, subject, body, all);
    }

    /** The same mail with words before its subject. */
    public Mail withSubjectAfter(String words) {
        return new Mail(id, envelope, words + subject, body, attachments);
    }

    /** The same mail with a line above everything else: what is said when it may have arrived before. */
    public Mail withFirstLine(String line) {
        String html = LetterHtml.withFirstLine(body.html, line);
        String text = LetterText.wrapped(line) + "\n" + body.text;
        return new Mail(id, envelope, subject, new Body(text, html, body.pictures), attachments);
    }

    /** One mail for each address, so that one that nobody has keeps it from no other; the first keeps the id. */
    public List<Mail> apart() {
        if (to().size() < 2) return List.of(this);
        List<Mail> all = new ArrayList<>();
        for (String address : to()) all.add(under(all.isEmpty() ? id : id + ".to" + (all.size() + 1), address));
        return all;
    }

    /** Under another id, which its pictures are called by too. */
    private Mail under(String other, String address) {
        String html = body.html;
        for (Picture picture : body.pictures)
            html = html.replace("cid:" + picture.cid(id), "cid:" + picture.cid(other));
        Body same = new Body(body.text, html, body.pictures);
        return new Mail(other, new Envelope(List.of(address), envelope.answers()), subject, same, attachments);
    }
}
