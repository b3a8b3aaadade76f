package dawnkettle.night;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.Assumptions;

/**
 * A mail server (exim) and a mailbox (dovecot) of Debian's packages on loopback, all they need in one folder: certificates
 * of a certificate authority of this test's own, one box that every mail goes to. The mail server writes what a receiving
 * server with DMARC would write about the sender at the head of each mail.
 */
final class RealServers implements AutoCloseable {
    private static final String EXIM = "/usr/sbin/exim4";
    private static final String DOVECOT = "/usr/sbin/dovecot";

    /** Exim delivers as its own user where its configuration is not the machine's. */
    private static final String MAIL = "Debian-exim";

    final int smtp;
    final int imap;
    private final Path folder;
    private final List<Process> servers = new ArrayList<>();

    static boolean areThere() {
        return Stream.of(EXIM, DOVECOT, "/usr/bin/openssl").allMatch(program -> Files.isExecutable(Path.of(program)))
                && "root".equals(System.getProperty("user.name"));
    }

    /** Leaves a test out where they are not there, and says so; where the whole build is tried as root it may not be left out. */
    static void assumeThere() {
        if (areThere()) return;
        String missing = "left out: needs exim4, dovecot-imapd and openssl, and root to start them";
        if ("true".equals(System.getenv("CI")) && "root".equals(System.getProperty("user.name")))
            throw new AssertionError(missing + "; .ci/run installs them");
        System.err.println(missing);
        Assumptions.abort(missing);
    }

    RealServers(Path folder) throws Exception {
        this.folder = folder;
        this.smtp = free();
        this.imap = free();
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        for (String name : List.of("run", "home", "spool", "log", "mail")) Files.createDirectory(folder.resolve(name));
        certificates();
        Files.writeString(folder.resolve("dovecot.conf"), dovecot());
        Files.writeString(folder.resolve("exim.conf"), exim());
        run("chown", "-R", MAIL + ":" + MAIL, "mail", "home");
        run("chown", "-R", "Debian-exim:Debian-exim", "spool", "log");
        start(DOVECOT, "-F", "-c", folder.resolve("dovecot.conf").toString());
        start(EXIM, "-C", folder.resolve("exim.conf").toString(), "-bdf");
        await(imap);
        await(smtp);
    }

    private void certificates() throws Exception {
        String curve = "ec_paramgen_curve:P-256";
        run(
                "openssl",
                "req",
                "-x509",
                "-newkey",
                "ec",
                "-pkeyopt",
                curve,
                "-nodes",
                "-keyout",
                "ca.key",
                "-out",
                "ca.pem",
                "-subj",
                "/CN=Private CA of this test",
                "-days",
                "2");
        run(
                "openssl",
                "req",
                "-newkey",
                "ec",
                "-pkeyopt",
                curve,
                "-nodes",
                "-keyout",
                "key.pem",
                "-out",
                "server.csr",
                "-subj",
                "/CN=localhost");
        Files.writeString(folder.resolve("names"), "subjectAltName=DNS:localhost\n");
        run(
                "openssl",
                "x509",
                "-req",
                "-in",
                "server.csr",
                "-CA",
                "ca.pem",
                "-CAkey",
                "ca.key",
                "-CAcreateserial",
                "-out",
                "cert.pem",
                "-days",
                "2",
                "-extfile",
                "names");
        // exim reads it as a user of its own; it is a key of this folder alone
        Files.setPosixFilePermissions(folder.resolve("key.pem"), PosixFilePermissions.fromString("rw-r--r--"));
    }

    /** Trusts the test's certificate authority alone. */
    SSLContext trust() throws Exception {
        KeyStore trusted = KeyStore.getInstance("PKCS12");
        trusted.load(null, null);
        try (InputStream in = Files.newInputStream(folder.resolve("ca.pem"))) {
            trusted.setCertificateEntry(
                    "ca", CertificateFactory.getInstance("X.509").generateCertificate(in));
        }
        TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
        trust.init(trusted);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(null, trust.getTrustManagers(), null);
        return context;
    }

    /** Forgets all places in the box, so that the server gives new ones under another validity. */
    void forgetPlaces() throws Exception {
        try (Stream<Path> files = Files.list(folder.resolve("mail"))) {
            for (Path file : files.filter(f -> f.getFileName().toString().startsWith("dovecot"))
                    .toList()) run("rm", "-rf", file.toString());
        }
        // A validity is the second in which the box was first seen.
        Thread.sleep(1_100);
    }

    private String dovecot() {
        return """
                base_dir = DIR/run
                state_dir = DIR/run
                log_path = DIR/dovecot.log
                protocols = imap
                listen = 127.0.0.1
                ssl = required
                ssl_cert = <DIR/cert.pem
                ssl_key = <DIR/key.pem
                mail_location = maildir:DIR/mail
                first_valid_uid = 1
                passdb {
                  driver = static
                  args = password=soymilk
                }
                userdb {
                  driver = static
                  args = uid=USER gid=USER home=DIR/home
                }
                service imap-login {
                  inet_listener imap {
                    port = 0
                  }
                  inet_listener imaps {
                    port = PORT
                    ssl = yes
                  }
                }
                """.replace("DIR", folder.toString()).replace("USER", MAIL).replace("PORT", String.valueOf(imap));
    }

    private String exim() {
        return """
                primary_hostname = mx.millrace.example
                spool_directory = DIR/spool
                log_file_path = DIR/log/%s
                pid_file_path = DIR/exim.pid
                local_interfaces = 127.0.0.1
                daemon_smtp_ports = PORT
                tls_advertise_hosts = *
                tls_certificate = DIR/cert.pem
                tls_privatekey = DIR/key.pem
                acl_smtp_rcpt = check
                host_lookup =
                deliver_drop_privilege = true
                never_users =
                keep_environment =
                begin acl
                check:
                  require encrypted = *
                  accept
                begin routers
                all:
                  driver = accept
                  transport = box
                begin transports
                box:
                  driver = appendfile
                  directory = DIR/mail
                  maildir_format
                  headers_add = Authentication-Results: mx.millrace.example; dmarc=pass header.from=${domain:${address:$h_From:}}
                begin retry
                * * F,1h,1m
                """.replace("DIR", folder.toString()).replace("PORT", String.valueOf(smtp));
    }

    private static int free() throws Exception {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return free.getLocalPort();
        }
    }

    private void run(String... command) throws Exception {
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), UTF_8);
        if (process.waitFor() != 0) throw new IllegalStateException(said);
    }

    private void start(String... command) throws Exception {
        servers.add(new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said-" + servers.size()).toFile())
                .start());
    }

    private static void await(int port) throws Exception {
        for (int i = 0; i < 100; i++)
            try {
                new Socket(InetAddress.getLoopbackAddress(), port).close();
                return;
            } catch (java.io.IOException notYet) {
                Thread.sleep(100);
            }
        throw new IllegalStateException("no server on port " + port);
    }

    @Override
    public void close() {
        servers.forEach(Process::destroy);
        try {
            for (Process server : servers) server.waitFor(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
