package dawnkettle.post;

import jakarta.mail.Session;
import jakarta.mail.URLName;
import java.io.IOException;
import java.util.Properties;
import org.eclipse.angus.mail.iap.ByteArray;
import org.eclipse.angus.mail.iap.ProtocolException;
import org.eclipse.angus.mail.imap.IMAPStore;
import org.eclipse.angus.mail.imap.protocol.IMAPProtocol;
import org.eclipse.angus.mail.util.MailLogger;

/**
 * The library's own way to a mailbox, which here takes no answer that is larger than any mail that is read: it makes room for
 * as many bytes as a server says will come, and the memory would be gone before the first of them.
 */
final class BoundedStore extends IMAPStore {
    /** One answer of a server: the largest mail that is fetched, and as much again. */
    static final int MOST_BYTES = 2_500_000;

    private static final int FIRST_BYTES = 256;

    BoundedStore(Session session) {
        super(session, new URLName("imap", null, -1, null, null, null));
    }

    @Override
    protected IMAPProtocol newIMAPProtocol(String host, int port) throws IOException, ProtocolException {
        return new Bounded(new Place(name, host, port), session.getProperties(), isSSL, logger);
    }

    /** Where the server is, and in which words it is spoken to. */
    private record Place(String name, String host, int port) {}

    private static final class Bounded extends IMAPProtocol {
        Bounded(Place place, Properties properties, boolean isSsl, MailLogger logger)
                throws IOException, ProtocolException {
            super(place.name(), place.host(), place.port(), properties, isSsl, logger);
        }

        @Override
        protected ByteArray getResponseBuffer() {
            super.getResponseBuffer();
            return new Room();
        }
    }

    /** Room for one answer. */
    private static final class Room extends ByteArray {
        Room() {
            super(FIRST_BYTES);
        }

        @Override
        public void grow(int by) {
            if (by > MOST_BYTES - getBytes().length)
                throw new IllegalStateException("an answer of the mailbox is larger than any mail that is read");
            super.grow(by);
        }
    }
}
