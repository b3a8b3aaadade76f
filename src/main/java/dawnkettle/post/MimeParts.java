package dawnkettle.post;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.Bytes;
import dawnkettle.mail.Mail;
import dawnkettle.mail.Mail.Attachment;
import dawnkettle.mail.Mail.Picture;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.InternetHeaders;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimeUtility;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.UUID;

/** The parts of a mail, one in another: text or HTML with its pictures, then the files that go along. */
final class MimeParts {
    private static final Base64.Encoder BASE64 = Base64.getMimeEncoder();

    private final Mail mail;

    MimeParts(Mail mail) {
        this.mail = mail;
    }

    MimeMultipart content() throws MessagingException {
        MimeMultipart words = new Bounded("alternative", "");
        words.addBodyPart(words("text/plain", mail.body().text()));
        MimeBodyPart html = words("text/html", mail.body().html());
        words.addBodyPart(mail.body().pictures().isEmpty() ? html : wrapped(withPictures(html)));
        if (mail.attachments().isEmpty()) return words;
        MimeMultipart all = new Bounded("mixed", "");
        all.addBodyPart(wrapped(words));
        for (Attachment attachment : mail.attachments()) all.addBodyPart(attached(attachment));
        return all;
    }

    private MimeMultipart withPictures(MimeBodyPart html) throws MessagingException {
        MimeMultipart related = new Bounded("related", "; type=\"text/html\"");
        related.addBodyPart(html);
        for (Picture picture : mail.body().pictures()) related.addBodyPart(shown(picture));
        return related;
    }

    private static MimeBodyPart wrapped(MimeMultipart inner) throws MessagingException {
        MimeBodyPart part = new MimeBodyPart();
        part.setContent(inner);
        return part;
    }

    private static MimeBodyPart words(String type, String text) throws MessagingException {
        InternetHeaders headers = new InternetHeaders();
        headers.setHeader("Content-Type", type + "; charset=utf-8");
        headers.setHeader("Content-Transfer-Encoding", "quoted-printable");
        return new MimeBodyPart(headers, quotedPrintable(text));
    }

    private MimeBodyPart shown(Picture picture) throws MessagingException {
        String file = picture.name() + ".png";
        InternetHeaders headers = new InternetHeaders();
        headers.setHeader("Content-Type", "image/png; name=\"" + file + "\"");
        headers.setHeader("Content-ID", "<" + picture.cid(mail.id()) + ">");
        headers.setHeader("Content-Disposition", "inline; filename=\"" + file + "\"");
        return base64(headers, picture.png());
    }

    private static MimeBodyPart attached(Attachment attachment) throws MessagingException {
        InternetHeaders headers = new InternetHeaders();
        headers.setHeader("Content-Type", attachment.mediaType() + ";\r\n name=\"" + attachment.name() + "\"");
        headers.setHeader("Content-Disposition", "attachment; filename=\"" + attachment.name() + "\"");
        return base64(headers, attachment.content());
    }

    private static MimeBodyPart base64(InternetHeaders headers, Bytes bytes) throws MessagingException {
        headers.setHeader("Content-Transfer-Encoding", "base64");
        return new MimeBodyPart(headers, BASE64.encode(bytes.toArray()));
    }

    private static byte[] quotedPrintable(String text) throws MessagingException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (OutputStream encoded = MimeUtility.encode(bytes, "quoted-printable")) {
            encoded.write(text.getBytes(UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** Parts between boundaries that follow from the mail's id; "=_" stands in neither encoding. */
    private final class Bounded extends MimeMultipart {
        Bounded(String kind, String more) {
            super(kind);
            UUID mark = UUID.nameUUIDFromBytes((mail.id() + "/" + kind).getBytes(UTF_8));
            contentType = "multipart/" + kind + more + ";\r\n boundary=\"=_" + mark + "\"";
        }
    }
}
