package dawnkettle.mail;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.Mail.Attachment;
import dawnkettle.mail.Mail.Body;
import dawnkettle.mail.Mail.Picture;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/** A whole mail as the outbox keeps it, so that what goes out later is what was meant, pictures and files with it. */
public final class KeptMail {
    /** How a kept mail begins. */
    public static final String FIRST_LINE = "dawnkettle-mail/1";

    private KeptMail() {}

    /** A line a field, in a fixed order: what kind it is, and its parts in Base64 (RFC 4648). */
    public static byte[] write(Mail mail) {
        List<String> lines = new ArrayList<>();
        lines.add(FIRST_LINE);
        lines.add(line("id", bytes(mail.id())));
        for (String address : mail.to()) lines.add(line("to", bytes(address)));
        mail.envelope().answers().ifPresent(asked -> lines.add(line("answers", bytes(asked))));
        lines.add(line("subject", bytes(mail.subject())));
        lines.add(line("text", bytes(mail.body().text())));
        lines.add(line("html", bytes(mail.body().html())));
        for (Picture picture : mail.body().pictures())
            lines.add(line("picture", bytes(picture.name()), picture.png().toArray(), bytes(picture.alternative())));
        for (Attachment file : mail.attachments())
            lines.add(line(
                    "file",
                    bytes(file.name()),
                    bytes(file.mediaType()),
                    file.content().toArray()));
        return bytes(String.join("\n", lines));
    }

    /** @throws IllegalArgumentException where it was not written by {@link #write} */
    public static Mail read(byte[] kept) {
        String[] lines = new String(kept, UTF_8).split("\n", -1);
        if (!lines[0].equals(FIRST_LINE)) throw new IllegalArgumentException("this is no kept mail");
        String id = "";
        String answers = "";
        String subject = "";
        String text = "";
        String html = "";
        List<String> to = new ArrayList<>();
        List<Picture> pictures = new ArrayList<>();
        List<Attachment> files = new ArrayList<>();
        for (int i = 1; i < lines.length; i++) {
            String[] parts = lines[i].split(" ", -1);
            switch (parts[0]) {
                case "id" -> id = words(parts[1]);
                case "to" -> to.add(words(parts[1]));
                case "answers" -> answers = words(parts[1]);
                case "subject" -> subject = words(parts[1]);
                case "text" -> text = words(parts[1]);
                case "html" -> html = words(parts[1]);
                case "picture" ->
                    pictures.add(new Picture(words(parts[1]), Bytes.of(decoded(parts[2])), words(parts[3])));
                case "file" -> files.add(new Attachment(words(parts[1]), words(parts[2]), Bytes.of(decoded(parts[3]))));
                default -> throw new IllegalArgumentException("a kept mail has no \"" + parts[0] + "\"");
            }
        }
        return new Mail(id, to, subject, new Body(text, html, pictures), files).answering(answers);
    }

    private static String line(String kind, byte[]... parts) {
        StringBuilder line = new StringBuilder(kind);
        for (byte[] part : parts) line.append(' ').append(Base64.getEncoder().encodeToString(part));
        return line.toString();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(UTF_8);
    }

    private static byte[] decoded(String part) {
        return Base64.getDecoder().decode(part);
    }

    private static String words(String part) {
        return new String(decoded(part), UTF_8);
    }
}
