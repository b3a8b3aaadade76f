package dawnkettle.post;

import dawnkettle.mail.Mail;
import dawnkettle.mail.Post;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import java.time.Instant;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javax.net.ssl.SSLContext;

/** Hands mail to a server by SMTP (RFC 5321), protected by TLS unless the owner says otherwise. */
public final class SmtpPost implements Post {
    /** A whole delivery may take so many times what a single read may: a slow drip never ends by itself. */
    public static final int PATIENCES = 4;

    /** What a server has to say to one mail is a few lines (common practice, no source). */
    private static final long MOST_BYTES = 1_000_000;

    private static final String OPEN_LINE =
            "a password is not sent without TLS; set the mail account's security to \"starttls\"";

    private final PostSettings settings;
    private final MimeForm form;
    private final MailLine line;

    /** Trusts whom the machine trusts. */
    public SmtpPost(PostSettings settings, MimeForm form) {
        this(settings, form, MailLine.machineTrust());
    }

    /** @param trust which certificates to believe */
    public SmtpPost(PostSettings settings, MimeForm form, SSLContext trust) {
        this.settings = settings;
        this.form = form;
        this.line = new MailLine(settings.security(), settings.patience(), trust);
    }

    @Override
    public void send(Mail mail, Instant date) {
        if (mail.to().isEmpty()) throw clean(mail, "nobody is to have it; name an address in conf/", null);
        if (settings.host().isEmpty()) throw clean(mail, "no mail server is named; name one in conf/", null);
        String password = settings.secretFile().map(Secret::read).orElse(null);
        if (password != null && line.isOpenTo(host())) throw clean(mail, OPEN_LINE, null);
        Wires wires = new Wires(MOST_BYTES);
        Session session = Session.getInstance(properties(wires));
        deliver(mail, new Delivery(form.message(mail, date, session), settings, password), wires);
    }

    /**
     * Logs in and out again.
     *
     * @return what the server says, in words
     * @throws DeviceAway clean, where it does not let us in
     */
    public String login() {
        String password = settings.secretFile().map(Secret::read).orElse(null);
        if (password != null && line.isOpenTo(host()))
            throw DeviceAway.clean("mail server \"" + host() + "\": " + OPEN_LINE, null);
        Wires wires = new Wires(MOST_BYTES);
        Session session = Session.getInstance(properties(wires));
        return new Login("mail server \"" + host() + "\"", wires)
                .tried(
                        () -> {
                            try (Transport transport = session.getTransport("smtp")) {
                                transport.connect(
                                        host(), settings.port(), settings.user().orElse(null), password);
                            }
                        },
                        settings.patience().multipliedBy(2));
    }

    private void deliver(Mail mail, Delivery delivery, Wires wires) {
        FutureTask<Void> task = new FutureTask<>(delivery);
        Thread thread = new Thread(task, "mail " + mail.id());
        thread.setDaemon(true);
        thread.start();
        try {
            task.get(settings.patience().toMillis() * PATIENCES, TimeUnit.MILLISECONDS);
        } catch (ExecutionException e) {
            if (!delivery.isAccepted()) throw failed(mail, delivery, e.getCause());
        } catch (TimeoutException e) {
            wires.cut();
            if (!delivery.isAccepted()) throw failed(mail, delivery, e);
        } catch (InterruptedException e) {
            wires.cut();
            Thread.currentThread().interrupt();
            if (!delivery.isAccepted()) throw failed(mail, delivery, e);
        }
    }

    private DeviceAway failed(Mail mail, Delivery delivery, Throwable cause) {
        int answer = Delivery.answer(cause);
        if (answer == 0 && delivery.hasBegun())
            return DeviceAway.ambiguous(
                    "mail " + mail.id() + ": \"" + host() + "\" took it in and gave no answer; "
                            + "it may have arrived, and goes again marked as sent before",
                    cause);
        return clean(mail, why(answer, cause), cause);
    }

    private String why(int answer, Throwable cause) {
        String server = "\"" + host() + "\" ";
        if (answer >= 500) return server + "refused it with " + answer + "; look at the addresses and the account";
        if (answer >= 400) return server + "put it off with " + answer + "; it is tried again";
        if (cause instanceof AuthenticationFailedException)
            return server + "refused the account; look at the user and the password file";
        if (MailLine.isAboutTls(cause))
            return server + "could not prove who it is; look at its name and its certificate";
        return server + "did not answer as a mail server does; see that it runs and is reached; it is tried again";
    }

    private String host() {
        return settings.host().orElse("");
    }

    private static DeviceAway clean(Mail mail, String why, Throwable cause) {
        return DeviceAway.clean("mail " + mail.id() + ": " + why, cause);
    }

    private Properties properties(Wires wires) {
        Properties properties = line.properties("smtp", wires);
        properties.put("mail.smtp.from", settings.from());
        properties.put("mail.smtp.quitwait", "false");
        properties.put("mail.smtp.auth", String.valueOf(settings.user().isPresent()));
        return properties;
    }
}
