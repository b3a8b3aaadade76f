package dawnkettle.post;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.net.SocketFactory;
import javax.net.ssl.SSLSocketFactory;

/** The connections of one delivery, so that a server that sends a byte a minute for ever can be cut off. */
final class Wires {
    private final List<Socket> all = new CopyOnWriteArrayList<>();
    private volatile boolean cut;

    void cut() {
        cut = true;
        all.forEach(Wires::close);
    }

    private Socket open() throws IOException {
        if (cut) throw new IOException("cut off");
        Socket socket = new Socket();
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
