package dawnkettle.post;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * Where orders come in by mail.
 *
 * @param host IMAP server
 * @param port 1 to 65535, usually 993 or 143
 * @param user account name
 * @param secretFile file that holds the password and that only the service may read
 * @param vouchedBy name by which the receiving server signs its authentication results (RFC 8601 section 2.2)
 * @param patience how long a connection, a read or a write may hang, 1 s to 5 min
 */
public record MailboxSettings(
        String host,
        int port,
        PostSettings.Security security,
        String user,
        Optional<Path> secretFile,
        String vouchedBy,
        Duration patience) {}
