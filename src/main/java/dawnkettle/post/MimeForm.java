package dawnkettle.post;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.Mail;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimeUtility;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Properties;

/** A mail as an internet message (RFC 5322, RFC 2045 to 2047); the same mail and date give the same bytes. */
public final class MimeForm {
    /** Columns that "Subject: " takes before the first fold. */
    private static final int SUBJECT_COLUMNS = 9;

    /** Bytes in one encoded word, so that a line with "Subject: " and a word keeps to the 76 columns of RFC 2047. */
    private static final int WORD_BYTES = 39;

    private final String from;
    private final Optional<String> answersTo;
    private final ZoneId zone;

    /** Answers come to where mail comes from. */
    public MimeForm(String from, ZoneId zone) {
        this(from, Optional.empty(), zone);
    }

    /**
     * @param from address that mail comes from
     * @param answersTo address that answers should go to, where it is another one
     * @param zone the shop's, which the date is written in
     */
    public MimeForm(String from, Optional<String> answersTo, ZoneId zone) {
        this.from = from;
        this.answersTo = answersTo.filter(address -> !address.equalsIgnoreCase(from));
        this.zone = zone;
    }

    /** The message as it stands in a file or on the wire, without dot-stuffing. */
    public byte[] bytes(Mail mail, Instant date) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            message(mail, date, Session.getInstance(new Properties())).writeTo(bytes);
        } catch (MessagingException e) {
            throw unfit(mail, e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    MimeMessage message(Mail mail, Instant date, Session session) {
        try {
            MimeMessage message = new SteadyMessage(session, messageId(mail));
            message.setFrom(new InternetAddress(plain(from), true));
            for (String address : mail.to())
                message.addRecipient(RecipientType.TO, new InternetAddress(plain(address), true));
            message.setHeader("Date", date(date));
            message.setHeader("Subject", subject(mail.subject()));
            if (answersTo.isPresent())
                message.setReplyTo(new InternetAddress[] {new InternetAddress(plain(answersTo.get()), true)});
            // RFC 3834, sections 3.1.5 and 5: nobody's absence notice is to answer this, and an answer says to what.
            message.setHeader(
                    "Auto-Submitted", mail.envelope().answers().isPresent() ? "auto-replied" : "auto-generated");
            for (String asked : mail.envelope().answers().stream().toList()) {
                message.setHeader("In-Reply-To", plain(asked));
                message.setHeader("References", plain(asked));
            }
            MimeMultipart content = new MimeParts(mail).content();
            message.setContent(content);
            message.saveChanges();
            return message;
        } catch (MessagingException e) {
            throw unfit(mail, e);
        }
    }

    private static DeviceAway unfit(Mail mail, MessagingException cause) {
        return DeviceAway.clean(
                "mail " + mail.id() + ": an address of it is not one; look at the mail addresses in conf/", cause);
    }

    private String messageId(Mail mail) {
        return "<" + mail.id() + "@" + plain(from.substring(from.indexOf('@') + 1)) + ">";
    }

    private String date(Instant date) {
        // The JDK writes a zero offset as GMT, which RFC 5322 section 4.3 calls obsolete.
        return DateTimeFormatter.RFC_1123_DATE_TIME.format(date.atZone(zone)).replace("GMT", "+0000");
    }

    /** As it is where it is plain ASCII, otherwise in encoded words (RFC 2047). */
    private static String subject(String subject) {
        String plain = plain(subject);
        boolean ascii = plain.length() < 900 && plain.chars().allMatch(c -> c < 128) && !plain.contains("=?");
        return ascii ? MimeUtility.fold(SUBJECT_COLUMNS, plain) : encodedWords(plain);
    }

    private static String encodedWords(String text) {
        List<String> words = new ArrayList<>();
        StringBuilder chunk = new StringBuilder();
        text.codePoints().forEach(c -> {
            String next = Character.toString(c);
            if ((chunk + next).getBytes(UTF_8).length > WORD_BYTES) words.add(encodedWord(chunk));
            chunk.append(next);
        });
        words.add(encodedWord(chunk));
        return String.join("\r\n ", words);
    }

    private static String encodedWord(StringBuilder chunk) {
        String word = "=?utf-8?b?"
                + Base64.getEncoder().encodeToString(chunk.toString().getBytes(UTF_8)) + "?=";
        chunk.setLength(0);
        return word;
    }

    /** Without anything that could end a header line. */
    private static String plain(String value) {
        StringBuilder plain = new StringBuilder(value.length());
        value.codePoints()
                .filter(c -> !Character.isISOControl(c) && c != 0x2028 && c != 0x2029)
                .forEach(plain::appendCodePoint);
        return plain.toString();
    }

    /** A message whose id stays as it was given. */
    private static final class SteadyMessage extends MimeMessage {
        private final String id;

        SteadyMessage(Session session, String id) {
            super(session);
            this.id = id;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", id);
        }
    }
}
