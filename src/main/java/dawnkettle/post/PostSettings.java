package dawnkettle.post;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * How mail leaves.
 *
 * @param host SMTP server; empty where mail only goes to the out-tray
 * @param port 1 to 65535, usually 587 or 465
 * @param user account name; empty where the server asks for none
 * @param secretFile file that holds the password and that only the service may read
 * @param from address that mail comes from
 * @param patience how long a connection, a read or a write may hang, 1 s to 5 min
 */
public record PostSettings(
        Optional<String> host,
        int port,
        Security security,
        Optional<String> user,
        Optional<Path> secretFile,
        String from,
        Duration patience) {
    /** How the connection is protected. */
    public enum Security {
        STARTTLS,
        TLS,
        NONE
    }
}
