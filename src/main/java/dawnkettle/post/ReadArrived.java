package dawnkettle.post;

import static java.nio.charset.StandardCharsets.UTF_8;

import dawnkettle.mail.Arrived;
import dawnkettle.mail.Arrived.Content;
import dawnkettle.mail.Arrived.Marks;
import dawnkettle.mail.Arrived.Sender;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Collectors;

/** Reads a mail's bytes, on a thread of their own and within a time: whatever they are, the night goes on. */
final class ReadArrived {
    /** What the mail library is never shown: it takes seconds over so many parts (measured: 200,000 in 14.6 s). */
    private static final int MOST_DASHED_LINES = 4 * Parts.MOST;

    /** Bytes of headers; no mail program and no server writes so many (common practice, no source). */
    private static final int LARGEST_HEAD = 100_000;

    /** For one mail, on a thread with so small a stack that nesting ends soon (common practice, no source). */
    private static final long LONGEST_MILLIS = 10_000;

    private static final int STACK_BYTES = 512 * 1024;

    /** A sender's clock may be so wrong; beyond it the time of arrival counts. */
    private static final Duration CLOCK_AHEAD = Duration.ofHours(1);

    private static final Content NOTHING = new Content("", "", Instant.EPOCH, List.of());

    private final Vouching vouching;
    private final Session session;

    ReadArrived(Vouching vouching) {
        this.vouching = vouching;
        Properties lenient = new Properties();
        lenient.put("mail.mime.multipart.ignoremissingendboundary", "true");
        lenient.put("mail.mime.base64.ignoreerrors", "true");
        this.session = Session.getInstance(lenient);
    }

    /** @param arrivedAt when the receiving server took it in */
    Arrived read(Arrived.Place place, byte[] bytes, Instant arrivedAt) {
        if (dashedLines(bytes) > MOST_DASHED_LINES)
            return refused(place, hash(bytes), "it has more than " + Parts.MOST + " parts");
        if (headBytes(bytes) > LARGEST_HEAD) return refused(place, hash(bytes), "its head is larger than 100 kB");
        FutureTask<Arrived> task = new FutureTask<>(() -> parse(place, bytes, arrivedAt));
        Thread thread = new Thread(null, task, "mail " + place.uid(), STACK_BYTES);
        thread.setDaemon(true);
        thread.start();
        try {
            return task.get(LONGEST_MILLIS, TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            return refused(place, hash(bytes), "reading it took more than ten seconds");
        } catch (ExecutionException e) {
            String why = e.getCause() instanceof Parts.Overgrown ? e.getCause().getMessage() : "it can't be read";
            return refused(place, hash(bytes), why);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while a mail was read", e);
        }
    }

    /** A mail of which nothing is read. */
    static Arrived refused(Arrived.Place place, String sha256, String why) {
        return new Arrived(
                place,
                new Marks("", sha256),
                new Sender(Optional.empty(), Optional.of(why), List.of(), true),
                NOTHING,
                Optional.of(why));
    }

    private Arrived parse(Arrived.Place place, byte[] bytes, Instant arrivedAt)
            throws MessagingException, IOException, Parts.Overgrown {
        MimeMessage message = new MimeMessage(session, new ByteArrayInputStream(bytes));
        Parts parts = Parts.of(message);
        ReadSender headers = new ReadSender(message, vouching);
        Sender sender = headers.sender();
        String subject = headers.subject();
        String marks = sender.from().orElse("") + "\n" + headers.first("Date") + "\n" + subject + "\n" + parts.words()
                + parts.tables().stream()
                        .map(table -> "\n" + hash(table.content().toArray()))
                        .collect(Collectors.joining());
        return new Arrived(
                place,
                new Marks(headers.first("Message-ID").strip(), hash(marks.getBytes(UTF_8))),
                sender,
                new Content(subject, parts.words(), written(message, arrivedAt), parts.tables()),
                Optional.empty());
    }

    private static Instant written(MimeMessage message, Instant arrivedAt) {
        try {
            Date sent = message.getSentDate();
            return sent == null || sent.toInstant().isAfter(arrivedAt.plus(CLOCK_AHEAD)) ? arrivedAt : sent.toInstant();
        } catch (MessagingException notADate) {
            return arrivedAt;
        }
    }

    static String hash(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Up to the first empty line. */
    private static int headBytes(byte[] bytes) {
        int line = 0;
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] != '\n') continue;
            if (i == line || i == line + 1 && bytes[line] == '\r') return i;
            line = i + 1;
        }
        return bytes.length;
    }

    private static int dashedLines(byte[] bytes) {
        int lines = 0;
        for (int i = 0; i + 1 < bytes.length; i++)
            if (bytes[i] == '-' && bytes[i + 1] == '-' && (i == 0 || bytes[i - 1] == '\n' || bytes[i - 1] == '\r'))
                lines++;
        return lines;
    }
}
