package dawnkettle.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import dawnkettle.mail.Mail;
import dawnkettle.post.PostSettings.Security;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(20)
class SmtpPostTest {
    private static final Mail MAIL = MimeFormTest.mail("Tofu – nuit 豆腐");
    private static final String SUBJECT = "mail 2026-12-04.summary.1: \"127.0.0.1\" ";

    @TempDir
    Path folder;

    @Test
    void mail_arrives_as_it_was_sent() throws Exception {
        GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        server.start();
        try {
            server.setUser("clerk", "soymilk");
            post(server.getSmtp().getPort(), Security.NONE, Optional.of(secret("rw-------")))
                    .send(MAIL, MimeFormTest.DAWN);
            MimeMessage[] received = server.getReceivedMessages();
            assertThat(received).hasSize(2);
            assertThat(received[0].getSubject()).isEqualTo("Tofu – nuit 豆腐");
            assertThat(received[0].getMessageID()).isEqualTo("<2026-12-04.summary.1@millrace.example>");
        } finally {
            server.stop();
        }
    }

    @Test
    void a_login_sends_nothing_and_says_whether_the_account_is_right() throws Exception {
        GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        server.start();
        try {
            server.setUser("clerk", "soymilk");
            int port = server.getSmtp().getPort();
            assertThat(post(port, Security.NONE, Optional.of(secret("rw-------")))
                            .login())
                    .isEqualTo("lets us in");
            assertThat(server.getReceivedMessages()).isEmpty();
            server.setUser("clerk", "another");
            assertThatThrownBy(() -> post(port, Security.NONE, Optional.of(secret("rw-------")))
                            .login())
                    .isInstanceOf(DeviceAway.class)
                    .hasMessage(
                            "mail server \"127.0.0.1\" refused the account; look at the user and the password file");
            server.stop();
            assertThatThrownBy(() -> post(port, Security.NONE, Optional.empty()).login())
                    .hasMessage("mail server \"127.0.0.1\" does not answer as a mail server does; "
                            + "see that it runs and is reached");
        } finally {
            server.stop();
        }
    }

    @Test
    void mail_goes_through_tls_to_a_server_whose_name_stands_in_its_certificate() throws Exception {
        Certificate certificate = Certificate.of("localhost", folder);
        System.setProperty("greenmail.tls.keystore.file", certificate.store().toString());
        System.setProperty("greenmail.tls.keystore.password", Certificate.PASSWORD);
        GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTPS));
        server.start();
        try {
            post("localhost", server.getSmtps().getPort(), Security.TLS, Optional.empty(), certificate.context())
                    .send(MAIL, MimeFormTest.DAWN);
            assertThat(server.getReceivedMessages()).hasSize(2);
        } finally {
            System.clearProperty("greenmail.tls.keystore.file");
            System.clearProperty("greenmail.tls.keystore.password");
            server.stop();
        }
    }

    @Test
    void a_server_that_the_machine_does_not_trust_gets_nothing() throws Exception {
        GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTPS));
        server.start();
        try {
            SmtpPost post = post(
                    "localhost", server.getSmtps().getPort(), Security.TLS, Optional.empty(), SSLContext.getDefault());
            assertThat(failure(post))
                    .hasMessage("mail 2026-12-04.summary.1: \"localhost\" could not prove who it is;"
                            + " look at its name and its certificate");
            assertThat(server.getReceivedMessages()).isEmpty();
        } finally {
            server.stop();
        }
    }

    @Test
    void mail_goes_by_starttls() throws Exception {
        SSLContext tls = Certificate.of("localhost", folder).context();
        try (ScriptedServer server = new ScriptedServer(Map.of(), tls)) {
            post("localhost", server.port(), Security.STARTTLS, Optional.empty(), tls)
                    .send(MAIL, MimeFormTest.DAWN);
            assertThat(server.heard)
                    .startsWith("EHLO", "STARTTLS", "EHLO", "MAIL", "RCPT", "RCPT", "DATA")
                    .contains("(stuffed)", "(message)");
        }
    }

    @Test
    void a_server_under_another_name_than_its_certificates_gets_nothing() throws Exception {
        SSLContext tls = Certificate.of("elsewhere.example", folder).context();
        try (ScriptedServer server = new ScriptedServer(Map.of(), tls)) {
            SmtpPost post = post("localhost", server.port(), Security.STARTTLS, Optional.empty(), tls);
            assertThat(failure(post)).hasMessageContaining("could not prove who it is");
            assertThat(server.heard).doesNotContain("MAIL");
        }
    }

    @Test
    void a_server_whose_certificate_is_over_or_was_signed_by_nobody_known_gets_nothing() throws Exception {
        SSLContext over = Certificate.expired("localhost", folder).context();
        SSLContext other = Certificate.of("localhost", folder).context();
        for (SSLContext shown : List.of(over, other))
            try (ScriptedServer server = new ScriptedServer(Map.of(), shown)) {
                SSLContext trusted = shown == over ? over : SSLContext.getDefault();
                SmtpPost post = post("localhost", server.port(), Security.STARTTLS, Optional.empty(), trusted);
                DeviceAway away = failure(post);
                assertThat(away)
                        .hasMessage("mail 2026-12-04.summary.1: \"localhost\" could not prove who it is;"
                                + " look at its name and its certificate");
                assertThat(away.isAmbiguous()).isFalse();
                assertThat(server.heard).doesNotContain("MAIL");
            }
    }

    @Test
    void a_server_that_talks_without_end_is_left_before_it_fills_the_memory() throws Exception {
        String endless = "250-" + "x".repeat(1_100_000);
        assertClean(
                Map.of("EHLO", endless),
                "did not answer as a mail server does; see that it runs and is reached; it is tried again");
    }

    @Test
    void without_the_tls_that_is_required_nothing_leaves() throws Exception {
        try (ScriptedServer server = new ScriptedServer(Map.of(), null)) {
            DeviceAway away = failure(post(server.port(), Security.STARTTLS, Optional.empty()));
            assertThat(away.isAmbiguous()).isFalse();
            assertThat(server.heard).doesNotContain("MAIL", "DATA");
        }
    }

    @Test
    void a_server_that_is_not_there_is_a_clean_failure() throws Exception {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        assertClean(port, "did not answer as a mail server does; see that it runs and is reached; it is tried again");
    }

    @Test
    void a_server_without_a_name_is_a_clean_failure() throws Exception {
        // RFC 6761 section 6.4: no name below "invalid" is ever found.
        SmtpPost post = post("mail.invalid", 587, Security.STARTTLS, Optional.empty(), SSLContext.getDefault());
        DeviceAway away = failure(post);
        assertThat(away.isAmbiguous()).isFalse();
        assertThat(away).hasMessageContaining("did not answer as a mail server does");
    }

    @Test
    void an_answer_that_puts_it_off_or_refuses_it_is_a_clean_failure_wherever_it_comes() throws Exception {
        String off = "put it off with %s; it is tried again";
        String no = "refused it with %s; look at the addresses and the account";
        for (String verb : List.of("MAIL", "RCPT", "DATA", "DOT")) {
            assertClean(Map.of(verb, "421 closing"), off.formatted("421"));
            assertClean(Map.of(verb, "450 busy"), off.formatted("450"));
            assertClean(Map.of(verb, "550 no such user"), no.formatted("550"));
        }
        assertClean(
                Map.of("GREETING", "421 too many"),
                "did not answer as a mail server does;" + " see that it runs and is reached; it is tried again");
    }

    @Test
    void a_line_that_drops_or_falls_silent_before_the_message_is_a_clean_failure() throws Exception {
        String gone = "did not answer as a mail server does; see that it runs and is reached; it is tried again";
        for (String verb : List.of("GREETING", "EHLO", "MAIL", "RCPT")) {
            assertClean(Map.of(verb, ScriptedServer.DROP), gone);
            assertClean(Map.of(verb, ScriptedServer.SILENCE), gone);
            assertClean(Map.of(verb, ScriptedServer.HALF_CLOSE), gone);
        }
    }

    @Test
    void a_line_that_drops_or_falls_silent_once_the_message_began_leaves_it_open_whether_it_arrived() throws Exception {
        for (String verb : List.of("DATA", "DOT"))
            for (String fault : List.of(
                    ScriptedServer.DROP, ScriptedServer.SILENCE, ScriptedServer.HALF_CLOSE, ScriptedServer.DRIP))
                try (ScriptedServer server = new ScriptedServer(Map.of(verb, fault), null)) {
                    DeviceAway away = failure(post(server.port(), Security.NONE, Optional.empty()));
                    assertThat(away.isAmbiguous()).as(verb + " " + fault).isTrue();
                    assertThat(away)
                            .hasMessage(SUBJECT + "took it in and gave no answer;"
                                    + " it may have arrived, and goes again marked as sent before");
                }
    }

    @Test
    void a_byte_now_and_then_does_not_hold_the_night() throws Exception {
        long start = System.nanoTime();
        assertClean(
                Map.of("MAIL", ScriptedServer.DRIP),
                "did not answer as a mail server does; see that it runs and is reached; it is tried again");
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(8));
    }

    @Test
    void what_the_server_took_is_sent_even_where_it_breaks_off_after_that() throws Exception {
        try (ScriptedServer server = new ScriptedServer(Map.of("QUIT", ScriptedServer.DROP), null)) {
            post(server.port(), Security.NONE, Optional.empty()).send(MAIL, MimeFormTest.DAWN);
            assertThat(server.heard).contains("(message)");
        }
    }

    @Test
    void a_password_that_others_can_read_or_that_would_travel_open_is_not_used() throws Exception {
        Path secret = secret("rw-r-----");
        assertThat(failure(post(1, Security.NONE, Optional.of(secret))))
                .hasMessage(
                        "mail: other users may read or write \"" + secret + "\"; make it ours alone with chmod 600");
        Path missing = folder.resolve("none");
        assertThat(failure(post(1, Security.NONE, Optional.of(missing))))
                .hasMessage("mail: the password file \"" + missing
                        + "\" can't be read; put it there, readable for the service");
        Path good = secret("rw-------");
        assertThat(failure(post("mail.millrace.example", 1, Security.NONE, Optional.of(good), SSLContext.getDefault())))
                .hasMessage("mail 2026-12-04.summary.1: a password is not sent without TLS;"
                        + " set the mail account's security to \"starttls\"");
    }

    @Test
    void a_mail_to_nobody_is_said() throws Exception {
        SmtpPost post = post(1, Security.NONE, Optional.empty());
        DeviceAway away =
                catchThrowableOfType(DeviceAway.class, () -> post.send(MAIL.addressedTo(List.of()), MimeFormTest.DAWN));
        assertThat(away).hasMessage("mail 2026-12-04.summary.1: nobody is to have it; name an address in conf/");
    }

    private void assertClean(Map<String, String> answers, String why) throws Exception {
        try (ScriptedServer server = new ScriptedServer(answers, null)) {
            assertClean(server.port(), why);
        }
    }

    private void assertClean(int port, String why) throws Exception {
        DeviceAway away = failure(post(port, Security.NONE, Optional.empty()));
        assertThat(away).hasMessage(SUBJECT + why);
        assertThat(away.isAmbiguous()).isFalse();
    }

    private static DeviceAway failure(SmtpPost post) {
        return catchThrowableOfType(DeviceAway.class, () -> post.send(MAIL, MimeFormTest.DAWN));
    }

    private SmtpPost post(int port, Security security, Optional<Path> secret) throws Exception {
        return post("127.0.0.1", port, security, secret, SSLContext.getDefault());
    }

    private static SmtpPost post(String host, int port, Security security, Optional<Path> secret, SSLContext trust) {
        PostSettings settings = new PostSettings(
                Optional.of(host),
                port,
                security,
                secret.map(file -> "clerk"),
                secret,
                "clerk@millrace.example",
                Duration.ofSeconds(1));
        return new SmtpPost(settings, new MimeForm("clerk@millrace.example", ZoneId.of("America/New_York")), trust);
    }

    private Path secret(String permissions) throws IOException {
        Path file = Files.writeString(folder.resolve("secret"), "soymilk\n");
        return Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
    }
}
