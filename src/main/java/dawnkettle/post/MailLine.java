package dawnkettle.post;

import dawnkettle.post.PostSettings.Security;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Properties;
import java.util.Set;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLException;

/**
 * How a line to a mail server is opened, whichever way mail goes: no wait without an end, TLS where it is asked for, and the
 * server proves who it is.
 *
 * @param patience how long a connection, a read or a write may hang
 * @param trust which certificates to believe
 */
record MailLine(Security security, Duration patience, SSLContext trust) {
    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "::1");

    /** The certificates that the machine trusts. */
    static SSLContext machineTrust() {
        try {
            return SSLContext.getDefault();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Whether a password would be read by anybody on the way. */
    boolean isOpenTo(String host) {
        return security == Security.NONE && !THIS_MACHINE.contains(host);
    }

    /**
     * What the mail library is told, whose own limits are "for ever" and "whoever answers".
     *
     * @param protocol "smtp" or "imap"
     * @param wires over which it goes
     */
    Properties properties(String protocol, Wires wires) {
        String mail = "mail." + protocol + ".";
        String millis = String.valueOf(patience.toMillis());
        String starts = String.valueOf(security == Security.STARTTLS);
        Properties properties = new Properties();
        properties.put(mail + "connectiontimeout", millis);
        properties.put(mail + "timeout", millis);
        properties.put(mail + "writetimeout", millis);
        properties.put(mail + "starttls.enable", starts);
        properties.put(mail + "starttls.required", starts);
        properties.put(mail + "ssl.enable", String.valueOf(security == Security.TLS));
        properties.put(mail + "ssl.checkserveridentity", "true");
        properties.put(mail + "ssl.protocols", "TLSv1.3 TLSv1.2");
        properties.put(mail + "ssl.socketFactory", wires.secure(trust.getSocketFactory()));
        properties.put(mail + "ssl.socketFactory.fallback", "false");
        properties.put(mail + "socketFactory.fallback", "false");
        if (security != Security.TLS) properties.put(mail + "socketFactory", wires.plain());
        return properties;
    }

    /** Whether a server could not prove who it is, or no protection was agreed on. */
    static boolean isAboutTls(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause())
            if (cause instanceof SSLException) return true;
        return false;
    }
}
