package dawnkettle.post;

import dawnkettle.mail.Arrived;
import dawnkettle.mail.Mailbox;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Session;
import jakarta.mail.Store;
import java.time.Duration;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Predicate;
import javax.net.ssl.SSLContext;

/** Looks into a mailbox by IMAP (RFC 3501), each time over a fresh connection: one that is kept falls silent unseen. */
public final class ImapMailbox implements Mailbox {
    /** A whole look may take so many times what a single read may, and never longer than the night can bear. */
    private static final int PATIENCES = 4;

    /** A whole look, whatever the patience (common practice, no source). */
    private static final Duration LONGEST = Duration.ofMinutes(1);

    /** Of one connection: all the mails of a look at their largest, and as much again for what is said of them. */
    private static final long MOST_BYTES = 2L * Visit.MOST_MAILS * Visit.MOST_BYTES;

    private final MailboxSettings settings;
    private final MailLine line;

    /** Trusts whom the machine trusts. */
    public ImapMailbox(MailboxSettings settings) {
        this(settings, MailLine.machineTrust());
    }

    /** @param trust which certificates to believe */
    public ImapMailbox(MailboxSettings settings, SSLContext trust) {
        this.settings = settings;
        this.line = new MailLine(settings.security(), settings.patience(), trust);
    }

    @Override
    public void look(Predicate<Arrived.Place> isKnown, Predicate<Arrived> taker) {
        refuseOpenLine();
        String password = settings.secretFile().map(Secret::read).orElse("");
        Wires wires = new Wires(MOST_BYTES);
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
        Wires wires = new Wires(MOST_BYTES);
        Session session = Session.getInstance(properties(wires));
        return new Login("order mailbox \"" + settings.host() + "\"", wires)
                .tried(
                        () -> {
                            try (Store store = new BoundedStore(session)) {
                                store.connect(settings.host(), settings.port(), settings.user(), password);
                            }
                        },
                        settings.patience().multipliedBy(2));
    }

    private void refuseOpenLine() {
        if (line.isOpenTo(settings.host()))
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
        if (MailLine.isAboutTls(cause)) return "could not prove who it is; look at its name and its certificate";
        return "did not answer as a mail server does; see that it runs and is reached; it is tried again";
    }

    private DeviceAway away(String why, Throwable cause) {
        return DeviceAway.clean("order mailbox \"" + settings.host() + "\" " + why, cause);
    }

    private Properties properties(Wires wires) {
        Properties properties = line.properties("imap", wires);
        properties.put(
                "mail.imap.fetchsize", "1100000"); // bytes: above the largest mail that is read, so one fetch is enough
        return properties;
    }
}
