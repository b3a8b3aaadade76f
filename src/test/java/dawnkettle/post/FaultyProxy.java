package dawnkettle.post;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Stands before a real server and passes all on, until the client says a certain word: then it goes wrong once, in one way. */
public final class FaultyProxy implements AutoCloseable {
    /** How it goes wrong. */
    public enum Fault {
        DROP,
        BYE,
        HALF_CLOSE,
        SILENCE,
        DRIP,
        HALF_A_MAIL,
        HUGE_LITERAL,
        ENDLESS_LINE
    }

    private final ServerSocket listener = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    private final List<Socket> sockets = new CopyOnWriteArrayList<>();
    private final int server;
    private volatile String word;
    private volatile Fault fault;

    public FaultyProxy(int server) throws IOException {
        this.server = server;
        start(this::accept);
    }

    public int port() {
        return listener.getLocalPort();
    }

    /** The next time that the client says {@code word}. */
    public void failAt(String word, Fault fault) {
        this.fault = fault;
        this.word = word;
    }

    /** Whether it went wrong as it was told to. */
    public boolean hasFailed() {
        return word == null;
    }

    private void accept() throws IOException {
        while (!listener.isClosed()) {
            Socket client = listener.accept();
            Socket real = new Socket(InetAddress.getLoopbackAddress(), server);
            sockets.addAll(List.of(client, real));
            start(() -> heed(client, real));
            start(() -> {
                try (real) {
                    real.getInputStream().transferTo(client.getOutputStream());
                }
            });
        }
    }

    private void heed(Socket client, Socket real) throws IOException {
        BufferedReader in = new BufferedReader(new InputStreamReader(client.getInputStream(), ISO_8859_1));
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            String fatal = word;
            if (fatal != null && line.contains(fatal)) {
                word = null;
                real.close();
                fail(client);
                return;
            }
            real.getOutputStream().write((line + "\r\n").getBytes(ISO_8859_1));
        }
        real.close();
    }

    private void fail(Socket client) throws IOException {
        OutputStream out = client.getOutputStream();
        switch (fault) {
            case DROP -> client.close();
            case BYE -> {
                out.write("* BYE going down\r\n".getBytes(ISO_8859_1));
                client.close();
            }
            case HALF_CLOSE -> client.shutdownOutput();
            case DRIP -> {
                out.write("* 1 FETCH (BODY[] {900}\r\n".getBytes(ISO_8859_1));
                trickle(client, "x");
            }
            case HALF_A_MAIL -> {
                out.write("* 1 FETCH (BODY[] {900}\r\nFrom: owner@millrace.example\r\n".getBytes(ISO_8859_1));
                client.close();
            }
            case HUGE_LITERAL -> out.write("* 1 FETCH (BODY[] {2000000000}\r\nFrom: x\r\n".getBytes(ISO_8859_1));
            case ENDLESS_LINE -> flood(client);
            default -> {}
        }
    }

    private static void trickle(Socket client, String letter) throws IOException {
        try {
            while (!client.isClosed()) {
                client.getOutputStream().write(letter.getBytes(ISO_8859_1));
                Thread.sleep(100);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void flood(Socket client) throws IOException {
        byte[] much = "x".repeat(100_000).getBytes(ISO_8859_1);
        for (long sent = 0; sent < 2_000_000_000L; sent += much.length)
            client.getOutputStream().write(much);
    }

    /** What may fail for the test's own reasons. */
    private interface Talk {
        void run() throws IOException;
    }

    private static void start(Talk talk) {
        Thread thread = new Thread(
                () -> {
                    try {
                        talk.run();
                    } catch (IOException over) {
                        // a line was cut, by us or by the other side
                    }
                },
                "faulty proxy");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        listener.close();
        for (Socket socket : sockets) socket.close();
    }
}
