package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.mail.EveryMail;
import dawnkettle.mail.Mail;
import dawnkettle.post.ImapMailbox;
import dawnkettle.post.MailboxSettings;
import dawnkettle.post.MimeForm;
import dawnkettle.post.PostSettings;
import dawnkettle.post.SmtpPost;
import dawnkettle.store.MailEnd;
import dawnkettle.store.MailEnd.State;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.Message;
import jakarta.mail.Multipart;
import jakarta.mail.Part;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Mail there and back over a real SMTP server with STARTTLS and a real IMAP server, under a certificate authority of our own. */
@Timeout(60)
class RealMailServersTest {
    @TempDir
    Path folder;

    @TempDir
    Path servers;

    @Test
    void an_order_is_sent_received_read_booked_marked_and_answered_and_counts_once_under_new_places() throws Exception {
        RealServers.assumeThere();
        try (RealServers real = new RealServers(servers);
                MailShop shop = new MailShop(folder, mailbox(real, real.trust()))) {
            shop.now = Instant.now();
            ownerWrites(real);
            awaitMails(1);
            shop.look();
            assertThat(shop.booked()).containsExactly("C002 FIRM-400 24 2026-12-05");
            assertThat(shop.ends()).extracting(MailEnd::state).containsExactly(State.TAKEN);
            assertThat(names())
                    .as("S is seen, and a letter is a keyword (maildir)")
                    .anyMatch(n -> n.matches(".*:2,S[a-z]"));

            send(real, shop.sent.get(0));
            awaitMails(2);
            shop.look();
            assertThat(shop.ends()).extracting(MailEnd::state).containsExactly(State.TAKEN, State.ASIDE);
            assertThat(shop.sent).as("our own reply is never answered").hasSize(1);

            real.forgetPlaces();
            shop.look();
            shop.look();
            assertThat(shop.booked()).containsExactly("C002 FIRM-400 24 2026-12-05");
            assertThat(shop.sent).hasSize(1);
        }
    }

    @Test
    void every_kind_of_mail_comes_through_as_it_was_written() throws Exception {
        RealServers.assumeThere();
        try (RealServers real = new RealServers(servers)) {
            SmtpPost post = post(real, real.trust());
            Map<String, Mail> mails = new EveryMail().all();
            for (Map.Entry<String, Mail> one : mails.entrySet())
                post.send(one.getValue().addressedTo(List.of(one.getKey() + "@millrace.example")), Instant.now());
            awaitMails(mails.size());
            Set<String> come = new HashSet<>();
            for (Path file : files()) {
                MimeMessage message = new MimeMessage(null, new ByteArrayInputStream(Files.readAllBytes(file)));
                String to = message.getHeader("To")[0];
                Mail mail = mails.get(to.substring(0, to.indexOf('@')));
                assertThat(message.getSubject()).isEqualTo(mail.subject());
                assertThat(message.getMessageID()).isEqualTo("<" + mail.id() + "@millrace.example>");
                assertThat(words(message))
                        .as(to)
                        .isEqualToNormalizingNewlines(mail.body().text());
                come.add(to);
            }
            assertThat(come).hasSize(mails.size());
        }
    }

    /** The plain text, wherever it lies. */
    private static String words(Part part) throws Exception {
        return part.isMimeType("multipart/*")
                ? words(((Multipart) part.getContent()).getBodyPart(0))
                : (String) part.getContent();
    }

    @Test
    void servers_whose_certificate_nobody_here_trusts_get_neither_mail_nor_password() throws Exception {
        RealServers.assumeThere();
        try (RealServers real = new RealServers(servers)) {
            Mail mail = new Mail(
                    "2026-12-04.x.1", List.of("a@b.example"), "x", new Mail.Body("x", "x", List.of()), List.of());
            assertThatThrownBy(() -> post(real, SSLContext.getDefault()).send(mail, Instant.now()))
                    .isInstanceOf(DeviceAway.class)
                    .hasMessageContaining("could not prove who it is");
            assertThatThrownBy(() -> mailbox(real, SSLContext.getDefault()).look(place -> false, taken -> true))
                    .isInstanceOf(DeviceAway.class)
                    .hasMessage(
                            "order mailbox \"localhost\" could not prove who it is; look at its name and its certificate");
        }
    }

    private ImapMailbox mailbox(RealServers real, SSLContext trust) throws Exception {
        Path secret = Files.writeString(folder.resolve("imap"), "soymilk\n");
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
        return new ImapMailbox(
                new MailboxSettings(
                        "localhost",
                        real.imap,
                        PostSettings.Security.TLS,
                        "orders",
                        Optional.of(secret),
                        MailShop.SERVER,
                        Duration.ofSeconds(10)),
                trust);
    }

    private static SmtpPost post(RealServers real, SSLContext trust) {
        PostSettings settings = new PostSettings(
                Optional.of("localhost"),
                real.smtp,
                PostSettings.Security.STARTTLS,
                Optional.empty(),
                Optional.empty(),
                "clerk@millrace.example",
                Duration.ofSeconds(10));
        return new SmtpPost(settings, new MimeForm("clerk@millrace.example", MailShop.ZONE), trust);
    }

    private static void send(RealServers real, Mail reply) throws Exception {
        post(real, real.trust()).send(reply, Instant.now());
    }

    /** As a person's mail program does. */
    private static void ownerWrites(RealServers real) throws Exception {
        Properties properties = new Properties();
        properties.put("mail.smtp.host", "localhost");
        properties.put("mail.smtp.port", String.valueOf(real.smtp));
        properties.put("mail.smtp.starttls.required", "true");
        properties.put("mail.smtp.ssl.socketFactory", real.trust().getSocketFactory());
        MimeMessage message = new MimeMessage(Session.getInstance(properties));
        message.setFrom(new InternetAddress("owner@millrace.example", "The Owner"));
        message.setRecipient(Message.RecipientType.TO, new InternetAddress("orders@millrace.example"));
        message.setSubject("Re: Fri 4 Dec – all well");
        message.setSentDate(new Date());
        message.setText("order C002 FIRM-400 24 2026-12-05\n\nThanks – K.\n", "utf-8");
        Transport.send(message);
    }

    private List<Path> files() throws Exception {
        try (var files = Files.walk(servers.resolve("mail"))) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> List.of("new", "cur")
                            .contains(file.getParent().getFileName().toString()))
                    .toList();
        }
    }

    private List<String> names() throws Exception {
        return files().stream().map(file -> file.getFileName().toString()).toList();
    }

    private void awaitMails(int count) throws Exception {
        for (int i = 0; i < 100 && names().size() < count; i++) Thread.sleep(100);
        assertThat(names()).hasSize(count);
    }
}
