package dawnkettle.night;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.user.GreenMailUser;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import dawnkettle.post.FaultyProxy;
import dawnkettle.post.FaultyProxy.Fault;
import dawnkettle.post.ImapMailbox;
import dawnkettle.post.MailboxSettings;
import dawnkettle.post.PostSettings.Security;
import dawnkettle.store.MailEnd;
import jakarta.mail.Flags;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A real mailbox whose line fails in the middle of a mail, or between the mail and its mark: the look ends in time and takes no
 * memory, and after the next look each mail is taken once and answered once.
 */
@Timeout(180)
class MailboxFaultsTest {
    private static final Duration PATIENCE = Duration.ofSeconds(1);

    @TempDir
    Path folder;

    private GreenMail server;
    private GreenMailUser box;
    private FaultyProxy proxy;
    private MailShop shop;
    private int sent;

    @BeforeEach
    void open() throws Exception {
        server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_IMAP));
        server.start();
        box = server.setUser("orders@millrace.example", "orders", "soymilk");
        proxy = new FaultyProxy(server.getImap().getPort());
        Path secret = Files.writeString(folder.resolve("password"), "soymilk\n");
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
        MailboxSettings settings = new MailboxSettings(
                "127.0.0.1", proxy.port(), Security.NONE, "orders", Optional.of(secret), MailShop.SERVER, PATIENCE);
        shop = new MailShop(folder, new ImapMailbox(settings));
    }

    @AfterEach
    void close() throws Exception {
        shop.close();
        proxy.close();
        server.stop();
    }

    private void arrives(String body) throws Exception {
        String raw = MailShop.vouched("owner@millrace.example")
                + "From: owner@millrace.example\nTo: orders@millrace.example\nSubject: x\n"
                + "Date: Wed, 2 Dec 2026 11:58:00 -0500\nMessage-ID: <" + ++sent + "@millrace.example>\n\n" + body
                + "\n";
        MimeMessage message = new MimeMessage(
                Session.getInstance(new Properties()),
                new ByteArrayInputStream(raw.replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8)));
        server.getManagers()
                .getImapHostManager()
                .getInbox(box)
                .appendMessage(message, new Flags(), Date.from(shop.now));
    }

    private static long heap() {
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    @Test
    void a_line_that_fails_within_a_mail_or_before_its_mark_loses_and_doubles_nothing() throws Exception {
        Map<String, List<Fault>> faults = Map.of(
                "BODY", List.of(Fault.values()),
                "STORE", List.of(Fault.DROP, Fault.BYE, Fault.HALF_CLOSE, Fault.SILENCE, Fault.ENDLESS_LINE));
        int mails = 0;
        for (Map.Entry<String, List<Fault>> one : faults.entrySet())
            for (Fault fault : one.getValue()) {
                arrives("order C002 FIRM-400 " + ++mails + " 2026-12-05");
                arrives("order C004 FIRM-400 " + ++mails + " 2026-12-05");
                proxy.failAt(one.getKey(), fault);
                int told = shop.story.size();
                long start = System.nanoTime();
                long before = heap();
                shop.look();
                String name = one.getKey() + " " + fault;
                assertThat(Duration.ofNanos(System.nanoTime() - start)).as(name).isLessThan(PATIENCE.multipliedBy(6));
                assertThat(heap() - before).as(name).isLessThan(200_000_000L);
                assertThat(proxy.hasFailed()).as(name).isTrue();
                assertThat(shop.story.subList(told, shop.story.size()))
                        .as(name)
                        .anyMatch(line -> line.startsWith("order mailbox \"127.0.0.1\" "));
                shop.now = shop.now.plus(Duration.ofHours(1));
                shop.look();
                assertThat(shop.ends()).as(name).hasSize(mails).allMatch(end -> end.state() == MailEnd.State.TAKEN);
            }
        assertThat(shop.booked()).hasSize(mails).doesNotHaveDuplicates();
        assertThat(shop.sent)
                .extracting(dawnkettle.mail.Mail::id)
                .hasSize(mails)
                .doesNotHaveDuplicates();
        shop.look();
        assertThat(shop.ends()).hasSize(mails);
        assertThat(marked()).as("each carries its mark in the end").isEqualTo(mails);
    }

    private long marked() throws Exception {
        return server.getManagers().getImapHostManager().getInbox(box).getMessages().stream()
                .filter(message -> message.getFlags().contains("DawnkettleDone"))
                .count();
    }
}
