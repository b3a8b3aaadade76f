package dawnkettle.post;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.net.SocketFactory;
import javax.net.ssl.SSLSocketFactory;

/** The connections of one delivery, so that a server that sends a byte a minute for ever can be cut off. */
final class Wires {
    private final List<Socket> all = new CopyOnWriteArrayList<>();
    private final long most;
    private volatile boolean cut;

    /** @param most bytes that one connection may bring; more is no mail server of ours, and would fill the memory */
    Wires(long most) {
        this.most = most;
    }

    void cut() {
        cut = true;
        all.forEach(Wires::close);
    }

    private Socket open() throws IOException {
        if (cut) throw new IOException("cut off");
        Socket socket = new Measured();
        all.add(socket);
        return socket;
    }

    private static void close(Socket socket) {
        try {
            socket.close();
        } catch (IOException e) {
            // It is being thrown away; what matters was known before.
        }
    }

    SocketFactory plain() {
        return new Plain();
    }

    SSLSocketFactory secure(SSLSocketFactory trusted) {
        return new Secure(trusted);
    }

    /** A wire that counts what comes over it. */
    private final class Measured extends Socket {
        private InputStream counted;

        @Override
        public synchronized InputStream getInputStream() throws IOException {
            if (counted == null) counted = new Counted(super.getInputStream());
            return counted;
        }
    }

    /** What comes over a wire, until it is too much. */
    private final class Counted extends FilterInputStream {
        private long come;

        Counted(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int one = super.read();
            if (one >= 0) count(1);
            return one;
        }

        @Override
        public int read(byte[] into, int from, int length) throws IOException {
            int some = super.read(into, from, length);
            if (some > 0) count(some);
            return some;
        }

        private void count(int some) throws IOException {
            come += some;
            if (come > most) throw new IOException("it sends without end");
        }
    }

    /** Opens wires without protection; the mail library asks for nothing else. */
    private final class Plain extends SocketFactory {
        @Override
        public Socket createSocket() throws IOException {
            return open();
        }

        @Override
        public Socket createSocket(String host, int port) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Socket createSocket(String host, int port, InetAddress local, int localPort) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Socket createSocket(InetAddress host, int port) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Socket createSocket(InetAddress host, int port, InetAddress local, int localPort) {
            throw new UnsupportedOperationException();
        }
    }

    /** Lays the protection over a wire that we hold. */
    private final class Secure extends SSLSocketFactory {
        private final SSLSocketFactory trusted;

        Secure(SSLSocketFactory trusted) {
            this.trusted = trusted;
        }

        @Override
        public Socket createSocket() throws IOException {
            return open();
        }

        @Override
        public Socket createSocket(Socket wire, String host, int port, boolean autoClose) throws IOException {
            return trusted.createSocket(wire, host, port, autoClose);
        }

        @Override
        public String[] getDefaultCipherSuites() {
            return trusted.getDefaultCipherSuites();
        }

        @Override
        public String[] getSupportedCipherSuites() {
            return trusted.getSupportedCipherSuites();
        }

        @Override
        public Socket createSocket(String host, int port) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Socket createSocket(String host, int port, InetAddress local, int localPort) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Socket createSocket(InetAddress host, int port) {
            throw new UnsupportedOperationException();
        }

        @Override
        public Socket createSocket(InetAddress host, int port, InetAddress local, int localPort) {
            throw new UnsupportedOperationException();
        }
    }
}
