package dawnkettle.post;

import dawnkettle.mail.Bytes;
import dawnkettle.mail.Mail.Attachment;
import jakarta.mail.BodyPart;
import jakarta.mail.MessagingException;
import jakarta.mail.Multipart;
import jakarta.mail.Part;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The parts of one mail: its words, and the tables that came along. Nothing else of it is opened. */
final class Parts {
    /** More parts than that has no order by mail (common practice, no source). */
    static final int MOST = 50;

    /** Parts within parts (common practice, no source). */
    static final int DEEPEST = 10;

    /** Of one part; a whole mail is not larger ({@code Visit}). */
    private static final int MOST_BYTES = 1_000_000;

    private final StringBuilder plain = new StringBuilder();
    private final StringBuilder html = new StringBuilder();
    private final List<Attachment> tables = new ArrayList<>();
    private int count;

    private Parts() {}

    /** A mail that has more in it than an order has. */
    static final class Overgrown extends Exception {
        private static final long serialVersionUID = 1L;

        Overgrown(String message) {
            super(message);
        }
    }

    static Parts of(Part mail) throws MessagingException, IOException, Overgrown {
        Parts parts = new Parts();
        parts.read(mail, 1);
        return parts;
    }

    /** The plain words, or the HTML where there are none. */
    String words() {
        return plain.toString().isBlank() ? html.toString() : plain.toString();
    }

    List<Attachment> tables() {
        return tables;
    }

    private void read(Part part, int depth) throws MessagingException, IOException, Overgrown {
        if (++count > MOST) throw new Overgrown("it has more than " + MOST + " parts");
        if (depth > DEEPEST) throw new Overgrown("its parts lie more than " + DEEPEST + " deep");
        if (part.isMimeType("multipart/*")) {
            Object content = part.getContent();
            if (content instanceof Multipart inner) all(inner, depth);
        } else if (isTable(part)) tables.add(table(part));
        else if (!Part.ATTACHMENT.equalsIgnoreCase(disposition(part))) {
            if (part.isMimeType("text/plain")) plain.append(text(part)).append('\n');
            if (part.isMimeType("text/html")) html.append(text(part)).append('\n');
        }
    }

    private void all(Multipart inner, int depth) throws MessagingException, IOException, Overgrown {
        int parts = inner.getCount();
        if (count + parts > MOST) throw new Overgrown("it has more than " + MOST + " parts");
        for (int i = 0; i < parts; i++) {
            BodyPart part = inner.getBodyPart(i);
            read(part, depth + 1);
        }
    }

    private static String disposition(Part part) {
        try {
            return part.getDisposition();
        } catch (MessagingException notWritten) {
            return Part.ATTACHMENT;
        }
    }

    private static boolean isTable(Part part) throws MessagingException {
        return part.isMimeType("text/csv") || fileName(part).endsWith(".csv");
    }

    private static String fileName(Part part) {
        try {
            String name = part.getFileName();
            return name == null ? "" : name.toLowerCase(Locale.ROOT);
        } catch (MessagingException notWritten) {
            return "";
        }
    }

    /** Under a name of ours: the sender's leads nowhere. */
    private Attachment table(Part part) throws MessagingException, IOException {
        return new Attachment("attachment-" + (tables.size() + 1) + ".csv", "text/csv", Bytes.of(bytes(part)));
    }

    private static String text(Part part) throws MessagingException, IOException {
        return new String(bytes(part), charset(part));
    }

    private static byte[] bytes(Part part) throws MessagingException, IOException {
        try (InputStream in = part.getInputStream()) {
            return in.readNBytes(MOST_BYTES);
        }
    }

    private static Charset charset(Part part) {
        try {
            String named = new jakarta.mail.internet.ContentType(part.getContentType()).getParameter("charset");
            return named == null
                    ? StandardCharsets.UTF_8
                    : Charset.forName(jakarta.mail.internet.MimeUtility.javaCharset(named));
        } catch (MessagingException | IllegalArgumentException unknown) {
            return StandardCharsets.UTF_8;
        }
    }
}
