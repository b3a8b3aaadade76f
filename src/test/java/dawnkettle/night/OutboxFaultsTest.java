package dawnkettle.night;

import static dawnkettle.post.ScriptedServer.DRIP;
import static dawnkettle.post.ScriptedServer.DROP;
import static dawnkettle.post.ScriptedServer.HALF_CLOSE;
import static dawnkettle.post.ScriptedServer.SILENCE;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Mail;
import dawnkettle.mail.Post;
import dawnkettle.post.Certificate;
import dawnkettle.post.MimeForm;
import dawnkettle.post.PostSettings;
import dawnkettle.post.PostSettings.Security;
import dawnkettle.post.ScriptedServer;
import dawnkettle.post.SmtpPost;
import dawnkettle.store.Ledger;
import dawnkettle.store.QueuedMail;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two mails of a morning meet a mail server that fails, over a real socket; five minutes later it works. Each must have
 * arrived, none unmarked a second time, and the morning must not have waited for it.
 */
@Timeout(120)
class OutboxFaultsTest {
    private static final Instant DAWN = Instant.parse("2026-12-04T11:30:00Z");
    private static final Duration PATIENCE = Duration.ofMillis(300);
    private static final String MARK = "This mail may have arrived before";

    @TempDir
    Path folder;

    private Ledger ledger;
    private LetterShop shop;
    private Letters letters;
    private int cases;

    @BeforeEach
    void open() {
        ledger = Ledger.open(folder.resolve("ledger.db"));
        shop = new LetterShop(ledger, DAWN);
        letters = new Letters(shop.office);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    /** Of the two mails of a case. */
    private List<String> ids() {
        return List.of("2026-12-04.summary." + cases, "2026-12-04.okara." + cases);
    }

    private static Mail mail(String id) {
        return new Mail(
                id,
                List.of("owner@millrace.example"),
                "Fri 4 Dec: all well",
                new Mail.Body("All is well.\n", "<main>\n<p>All is well.</p>\n</main>\n", List.of()),
                List.of());
    }

    private static Post post(String host, int port, Security security, SSLContext trust) {
        PostSettings settings = new PostSettings(
                Optional.of(host),
                port,
                security,
                Optional.empty(),
                Optional.empty(),
                "clerk@millrace.example",
                PATIENCE);
        return new SmtpPost(settings, new MimeForm("clerk@millrace.example", MailShop.ZONE), trust);
    }

    private static Post plain(int port) throws Exception {
        return post("127.0.0.1", port, Security.NONE, SSLContext.getDefault());
    }

    /** Sends both into the fault and once more when it is over. @return what the servers got in all */
    private List<String> sent(String name, Post faulty, ScriptedServer faultyServer) throws Exception {
        cases++;
        try (ScriptedServer good = new ScriptedServer(Map.of(), null)) {
            shop.way = Optional.of(faulty);
            long start = System.nanoTime();
            for (String id : ids()) assertThat(letters.send(mail(id))).contains("(not sent yet: ");
            assertThat(Duration.ofNanos(System.nanoTime() - start))
                    .as(name + ": the morning goes on")
                    .isLessThan(PATIENCE.multipliedBy(2L * SmtpPost.PATIENCES + 4));
            shop.way = Optional.of(plain(good.port()));
            shop.later(Duration.ofMinutes(5));
            letters.deliver();
            letters.deliver();
            for (String id : ids())
                assertThat(ledger.outbox().find(id).orElseThrow().state())
                        .as(name)
                        .isEqualTo(QueuedMail.State.SENT);
            assertThat(good.messages).as(name + ": nothing is lost").hasSize(2);
            List<String> all = new java.util.ArrayList<>(faultyServer == null ? List.of() : faultyServer.messages);
            all.addAll(good.messages);
            return all;
        }
    }

    private static long withId(List<String> messages, String id) {
        return messages.stream()
                .filter(message -> message.contains("Message-ID: <" + id + "@millrace.example>"))
                .count();
    }

    @Test
    void what_never_left_comes_once_and_unmarked() throws Exception {
        int closed;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            closed = free.getLocalPort();
        }
        assertClean(sent("refused", plain(closed), null));
        // RFC 6761 section 6.4: no name below "invalid" is ever found.
        assertClean(sent("no-name", post("mail.invalid", 587, Security.TLS, SSLContext.getDefault()), null));
        for (String verb : List.of("GREETING", "MAIL", "RCPT"))
            for (String fault : List.of("421 closing", "450 busy", "550 no", DROP, HALF_CLOSE))
                assertClean(verb, fault);
        for (String verb : List.of("DATA", "DOT"))
            for (String fault : List.of("421 closing", "450 busy", "550 no")) assertClean(verb, fault);
        for (String fault : List.of(DROP, HALF_CLOSE)) assertClean("EHLO", fault);
        for (String fault : List.of(SILENCE, DRIP)) assertClean("MAIL", fault);
    }

    @Test
    void a_certificate_that_is_over_of_another_name_or_signed_by_nobody_known_gets_nothing() throws Exception {
        SSLContext over = Certificate.expired("localhost", folder).context();
        SSLContext elsewhere = Certificate.of("elsewhere.example", folder).context();
        SSLContext unknown = Certificate.of("localhost", folder).context();
        Map<SSLContext, SSLContext> shownAndTrusted =
                Map.of(over, over, elsewhere, elsewhere, unknown, SSLContext.getDefault());
        int number = 0;
        for (Map.Entry<SSLContext, SSLContext> one : shownAndTrusted.entrySet())
            try (ScriptedServer server = new ScriptedServer(Map.of(), one.getKey())) {
                Post post = post("localhost", server.port(), Security.STARTTLS, one.getValue());
                assertClean(sent("certificate" + number++, post, server));
                assertThat(server.messages).isEmpty();
            }
    }

    private void assertClean(String verb, String fault) throws Exception {
        try (ScriptedServer server = new ScriptedServer(Map.of(verb, fault), null)) {
            assertClean(sent(verb + "-" + fault, plain(server.port()), server).stream()
                    .skip(server.messages.size())
                    .toList());
        }
    }

    private void assertClean(List<String> messages) {
        for (String id : ids()) assertThat(withId(messages, id)).isEqualTo(1);
        assertThat(messages).noneMatch(message -> message.contains(MARK));
    }

    @Test
    void what_may_have_arrived_comes_again_under_the_same_id_and_says_so() throws Exception {
        for (String fault : List.of(DROP, HALF_CLOSE, SILENCE, DRIP))
            for (String verb : List.of("DATA", "DOT"))
                try (ScriptedServer server = new ScriptedServer(Map.of(verb, fault), null)) {
                    List<String> messages = sent(verb + "-" + fault, plain(server.port()), server);
                    boolean arrivedBefore = verb.equals("DOT");
                    assertThat(server.messages).hasSize(arrivedBefore ? 2 : 0);
                    for (String id : ids()) assertThat(withId(messages, id)).isEqualTo(arrivedBefore ? 2 : 1);
                    assertThat(messages.subList(server.messages.size(), messages.size()))
                            .as(verb + " " + fault)
                            .allMatch(message -> message.contains(MARK));
                    assertThat(server.messages).noneMatch(message -> message.contains(MARK));
                }
    }

    @Test
    void an_address_that_nobody_has_keeps_the_mail_from_no_other() throws Exception {
        cases++;
        try (ScriptedServer no = new ScriptedServer(Map.of("RCPT", "550 no such user"), null);
                ScriptedServer good = new ScriptedServer(Map.of(), null)) {
            Post toNobody = plain(no.port());
            Post toAll = plain(good.port());
            shop.way = Optional.of(
                    (mail, date) -> (mail.to().contains("typo@millrace.example") ? toNobody : toAll).send(mail, date));
            Mail mail = mail(ids().get(0)).addressedTo(List.of("typo@millrace.example", "owner@millrace.example"));
            assertThat(letters.send(mail)).contains("refused it with 550; look at the addresses");
            assertThat(good.messages).hasSize(1);
            assertThat(good.messages.get(0))
                    .contains("To: owner@millrace.example", "Message-ID: <2026-12-04.summary.1.to2@millrace.example>");
            assertThat(ledger.outbox().waiting())
                    .extracting(QueuedMail::messageId)
                    .containsExactly(ids().get(0));
        }
    }
}
