package dawnkettle.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import dawnkettle.mail.Arrived;
import dawnkettle.post.FaultyLine.Fault;
import dawnkettle.post.PostSettings.Security;
import dawnkettle.trouble.DeviceAway;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A mailbox that fails in every way known: the look ends in time, and says what is wrong. */
@Timeout(60)
class ImapMailboxTest {
    private static final String GONE = "order mailbox \"127.0.0.1\" did not answer as a mail server does;"
            + " see that it runs and is reached; it is tried again";
    private static final String SLOW =
            "order mailbox \"127.0.0.1\" took too long to answer; what is left is read at the next look";

    @TempDir
    Path folder;

    private final List<Arrived> taken = new ArrayList<>();

    @Test
    void whatever_the_mailbox_does_the_look_ends_within_four_patiences_and_nothing_is_taken() throws Exception {
        for (String command : List.of("GREETING", "LOGIN", "SELECT", "FETCH"))
            for (Fault fault : Fault.values())
                try (FaultyLine line = new FaultyLine(command, fault)) {
                    long start = System.nanoTime();
                    DeviceAway away = failure(mailbox("127.0.0.1", line.port(), Security.NONE));
                    assertThat(away).as(command + " " + fault).isNotNull();
                    assertThat(away.getMessage())
                            .as(command + " " + fault)
                            .startsWith("order mailbox \"127.0.0.1\" ")
                            .doesNotContain("soymilk");
                    assertThat(Duration.ofNanos(System.nanoTime() - start))
                            .as(command + " " + fault)
                            .isLessThan(Duration.ofSeconds(4));
                }
        assertThat(taken).isEmpty();
    }

    @Test
    void a_line_that_drops_and_one_that_drips_say_what_they_are() throws Exception {
        try (FaultyLine line = new FaultyLine("SELECT", Fault.DROP)) {
            assertThat(failure(mailbox("127.0.0.1", line.port(), Security.NONE)))
                    .hasMessage(GONE);
        }
        try (FaultyLine line = new FaultyLine("SELECT", Fault.DRIP)) {
            assertThat(failure(mailbox("127.0.0.1", line.port(), Security.NONE)))
                    .hasMessage(SLOW);
        }
    }

    @Test
    void a_mailbox_that_is_not_there_or_has_no_name_is_said() throws Exception {
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        assertThat(failure(mailbox("127.0.0.1", port, Security.NONE))).hasMessage(GONE);
        assertThat(failure(mailbox("mail.invalid", port, Security.TLS))).hasMessageContaining("did not answer");
    }

    @Test
    void a_wrong_password_and_a_certificate_that_nobody_trusts_are_said() throws Exception {
        GreenMail server = new GreenMail(new ServerSetup[] {
            new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_IMAP),
            new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_IMAPS)
        });
        server.start();
        try {
            server.setUser("orders@millrace.example", "orders", "another");
            assertThat(failure(mailbox("127.0.0.1", server.getImap().getPort(), Security.NONE)))
                    .hasMessage(
                            "order mailbox \"127.0.0.1\" refused the account; look at the user and the password file");
            assertThat(failure(mailbox("localhost", server.getImaps().getPort(), Security.TLS)))
                    .hasMessage("order mailbox \"localhost\" could not prove who it is;"
                            + " look at its name and its certificate");
        } finally {
            server.stop();
        }
    }

    @Test
    void without_tls_no_password_leaves_the_machine() throws Exception {
        assertThat(failure(mailbox("imap.millrace.example", 143, Security.NONE)))
                .hasMessage("order mailbox \"imap.millrace.example\" a password is not sent without TLS;"
                        + " set its security to \"tls\" or \"starttls\"");
    }

    @Test
    void a_login_reads_nothing_and_says_whether_the_account_is_right() throws Exception {
        GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_IMAP));
        server.start();
        try {
            server.setUser("orders@millrace.example", "orders", "soymilk");
            assertThat(mailbox("127.0.0.1", server.getImap().getPort(), Security.NONE)
                            .login())
                    .isEqualTo("lets us in");
        } finally {
            server.stop();
        }
        for (Fault fault : Fault.values())
            try (FaultyLine line = new FaultyLine("LOGIN", fault)) {
                ImapMailbox mailbox = mailbox("127.0.0.1", line.port(), Security.NONE);
                assertThat(catchThrowableOfType(DeviceAway.class, mailbox::login))
                        .as("%s", fault)
                        .isNotNull()
                        .hasMessageStartingWith("order mailbox \"127.0.0.1\" ")
                        .hasMessageNotContaining("soymilk");
            }
        assertThat(catchThrowableOfType(
                        DeviceAway.class,
                        () -> mailbox("imap.millrace.example", 143, Security.NONE)
                                .login()))
                .hasMessageContaining("a password is not sent without TLS");
    }

    private DeviceAway failure(ImapMailbox mailbox) {
        return catchThrowableOfType(DeviceAway.class, () -> mailbox.look(place -> false, mail -> taken.add(mail)));
    }

    private ImapMailbox mailbox(String host, int port, Security security) throws IOException {
        try {
            Path secret = Files.writeString(folder.resolve("secret"), "soymilk\n");
            Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
            MailboxSettings settings = new MailboxSettings(
                    host, port, security, "orders", Optional.of(secret), "mx.millrace.example", Duration.ofMillis(500));
            return new ImapMailbox(settings, SSLContext.getDefault());
        } catch (java.security.NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
