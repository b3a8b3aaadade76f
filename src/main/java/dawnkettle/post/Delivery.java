package dawnkettle.post;

import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.URLName;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.Callable;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;
import org.eclipse.angus.mail.smtp.SMTPTransport;

/** One attempt to hand one message to a server; it knows how far it came. */
final class Delivery implements Callable<Void> {
    private final MimeMessage message;
    private final PostSettings settings;
    private final String password;
    private final Wire wire;

    private volatile boolean begun;
    private volatile boolean accepted;

    /** @param password null where the server asks for none */
    Delivery(MimeMessage message, PostSettings settings, String password) {
        this.message = message;
        this.settings = settings;
        this.password = password;
        this.wire = new Wire(message.getSession());
    }

    @Override
    public Void call() throws MessagingException {
        try {
            wire.connect(
                    settings.host().orElseThrow(),
                    settings.port(),
                    settings.user().orElse(null),
                    password);
            wire.sendMessage(message, message.getAllRecipients());
        } finally {
            close();
        }
        return null;
    }

    private void close() {
        try {
            wire.close();
        } catch (MessagingException e) {
            // Whether it was taken is known by now; a broken goodbye changes nothing.
        }
    }

    /** Whether the server has said that it took the message. */
    boolean isAccepted() {
        return accepted;
    }

    /** Whether the message itself had begun to leave. */
    boolean hasBegun() {
        return begun;
    }

    /** What the server answered in the end, 400 to 599; 0 where it gave no such answer. */
    static int answer(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            int code = 0;
            if (cause instanceof SMTPSendFailedException sent) code = sent.getReturnCode();
            if (cause instanceof SMTPAddressFailedException address) code = address.getReturnCode();
            if (cause instanceof SMTPSenderFailedException sender) code = sender.getReturnCode();
            if (code >= 400 && code <= 599) return code;
        }
        return 0;
    }

    /** The library's own delivery, which here says when the message begins to leave and when it was taken. */
    private final class Wire extends SMTPTransport {
        Wire(Session session) {
            super(session, new URLName("smtp", null, -1, null, null, null));
        }

        @Override
        protected OutputStream data() throws MessagingException {
            begun = true;
            return super.data();
        }

        @Override
        protected void finishData() throws IOException, MessagingException {
            super.finishData();
            accepted = true;
        }
    }
}
