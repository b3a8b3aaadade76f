package dawnkettle.post;

import dawnkettle.mail.Arrived;
import dawnkettle.mail.Mailbox;
import dawnkettle.post.PostSettings.Security;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Session;
import jakarta.mail.Store;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Properties;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Predicate;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLException;

/** Looks into a mailbox by IMAP (RFC 3501), each time over a fresh connection: one that is kept falls silent unseen. */
public final class ImapMailbox implements Mailbox {
    /** A whole look may take so many times what a single read may, and never longer than the night can bear. */
    private static final int PATIENCES = 4;

    private static final Duration LONGEST = Duration.ofMinutes(1);
    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "::1");

    private final MailboxSettings settings;
    private final SSLContext trust;

    /** Trusts whom the machine trusts. */
    public ImapMailbox(MailboxSettings settings) {
        this(settings, machineTrust());
    }

    /** @param trust which certificates to believe */
    public ImapMailbox(MailboxSettings settings, SSLContext trust) {
        this.settings = settings;
        this.trust = trust;
    }

    private static SSLContext machineTrust() {
        try {
            return SSLContext.getDefault();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void look(Predicate<Arrived.Place> isKnown, Predicate<Arrived> taker) {
        refuseOpenLine();
        String password = settings.secretFile().map(Secret::read).orElse("");
        Wires wires = new Wires();
        Session session = Session.getInstance(properties(wires));
        Visit visit = new Visit(session, settings, password, isKnown);
        try {
            look(visit, wires, taker);
        } finally {
            wires.cut();
        }
    }

    /**
     * Logs in and out again; no mail is looked at.
     *
     * @return what the server says, in words
     * @throws DeviceAway clean, where it does not let us in
     */
    public String login() {
        refuseOpenLine();
        String password = settings.secretFile().map(Secret::read).orElse("");
        Wires wires = new Wires();
        Session session = Session.getInstance(properties(wires));
        return new Login("order mailbox \"" + settings.host() + "\"", wires)
                .tried(
                        () -> {
                            try (Store store = session.getStore("imap")) {
                                store.connect(settings.host(), settings.port(), settings.user(), password);
                            }
                        },
                        settings.patience().multipliedBy(2));
    }

    private void refuseOpenLine() {
        if (settings.security() == Security.NONE && !THIS_MACHINE.contains(settings.host()))
            throw away("a password is not sent without TLS; set its security to \"tls\" or \"starttls\"", null);
    }

    /** The line is another thread's, so that it can be cut off; the taker is called on ours, where the ledger is. */
    private void look(Visit visit, Wires wires, Predicate<Arrived> taker) {
        FutureTask<Void> task = new FutureTask<>(visit);
        Thread thread = new Thread(task, "order mailbox");
        thread.setDaemon(true);
        thread.start();
        long until = System.nanoTime() + longest().toNanos();
        try {
            while (visit.hand(taker, until - System.nanoTime())) {
                // each mail is handed over by the visit and taken here
            }
            task.get(Math.max(1, until - System.nanoTime()), TimeUnit.NANOSECONDS);
        } catch (ExecutionException e) {
            throw away(why(e.getCause()), e.getCause());
        } catch (TimeoutException e) {
            throw away("took too long to answer; what is left is read at the next look", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw away("was left while it was read", e);
        } finally {
            wires.cut();
            visit.stop();
        }
    }

    private Duration longest() {
        Duration some = settings.patience().multipliedBy(PATIENCES);
        return some.compareTo(LONGEST) < 0 ? some : LONGEST;
    }

    private static String why(Throwable cause) {
        if (cause instanceof AuthenticationFailedException)
            return "refused the account; look at the user and the password file";
        for (Throwable each = cause; each != null; each = each.getCause())
            if (each instanceof SSLException) return "could not prove who it is; look at its name and its certificate";
        return "did not answer as a mail server does; see that it runs and is reached; it is tried again";
    }

    private DeviceAway away(String why, Throwable cause) {
        return DeviceAway.clean("order mailbox \"" + settings.host() + "\" " + why, cause);
    }

    private Properties properties(Wires wires) {
        String patience = String.valueOf(settings.patience().toMillis());
        Properties properties = new Properties();
        properties.put("mail.imap.connectiontimeout", patience);
        properties.put("mail.imap.timeout", patience);
        properties.put("mail.imap.writetimeout", patience);
        properties.put("mail.imap.fetchsize", "1100000");
        properties.put("mail.imap.starttls.enable", String.valueOf(settings.security() == Security.STARTTLS));
        properties.put("mail.imap.starttls.required", String.valueOf(settings.security() == Security.STARTTLS));
        properties.put("mail.imap.ssl.enable", String.valueOf(settings.security() == Security.TLS));
        properties.put("mail.imap.ssl.checkserveridentity", "true");
        properties.put("mail.imap.ssl.protocols", "TLSv1.3 TLSv1.2");
        properties.put("mail.imap.ssl.socketFactory", wires.secure(trust.getSocketFactory()));
        properties.put("mail.imap.ssl.socketFactory.fallback", "false");
        properties.put("mail.imap.socketFactory.fallback", "false");
        if (settings.security() != Security.TLS) properties.put("mail.imap.socketFactory", wires.plain());
        return properties;
    }
}
