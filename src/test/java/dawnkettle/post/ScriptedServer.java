package dawnkettle.post;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocket;

/** A mail server that answers as the test tells it: by verb, else as a good server would. */
public final class ScriptedServer implements AutoCloseable {
    public static final String DROP = "drop";
    public static final String SILENCE = "silence";
    public static final String DRIP = "drip";
    public static final String HALF_CLOSE = "half close";

    private final ServerSocket listener;
    private final Map<String, String> answers;
    private final SSLContext certificate;
    final List<String> heard = new CopyOnWriteArrayList<>();
    /** Messages that came to their last line, each as its lines. */
    public final List<String> messages = new CopyOnWriteArrayList<>();

    private final List<Talk> talks = new CopyOnWriteArrayList<>();

    /** @param certificate what to show after STARTTLS; null where it is not offered */
    public ScriptedServer(Map<String, String> answers, SSLContext certificate) throws IOException {
        this.answers = answers;
        this.certificate = certificate;
        listener = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
        Thread thread = new Thread(this::serve, "scripted server");
        thread.setDaemon(true);
        thread.start();
    }

    public int port() {
        return listener.getLocalPort();
    }

    private void serve() {
        while (!listener.isClosed()) {
            try {
                Talk talk = new Talk(listener.accept());
                talks.add(talk);
                Thread thread = new Thread(talk, "scripted talk");
                thread.setDaemon(true);
                thread.start();
            } catch (IOException e) {
                heard.add("(gone)");
            }
        }
    }

    /** One client. */
    private final class Talk implements Runnable {
        private volatile Socket client;

        Talk(Socket client) {
            this.client = client;
        }

        @Override
        public void run() {
            try {
                converse();
            } catch (IOException e) {
                heard.add("(gone)");
            }
        }

        private void converse() throws IOException {
            if (!answer("GREETING", "220 scripted.example")) return;
            BufferedReader in = reader();
            for (String line = in.readLine(); line != null; line = in.readLine()) {
                String verb = line.split(" ")[0].toUpperCase(java.util.Locale.ROOT);
                heard.add(verb);
                if (!answer(verb, usual(verb))) return;
                if (verb.equals("STARTTLS")) in = secured();
                if (verb.equals("DATA") && !answers.containsKey("DATA") && !readMessage(in)) return;
                if (verb.equals("QUIT")) return;
            }
        }

        private boolean readMessage(BufferedReader in) throws IOException {
            StringBuilder message = new StringBuilder();
            String line = in.readLine();
            for (; line != null && !line.equals("."); line = in.readLine()) {
                if (line.equals("..a line that begins with a dot")) heard.add("(stuffed)");
                message.append(line).append('\n');
            }
            heard.add("(message)");
            if (line != null) messages.add(message.toString());
            return answer("DOT", "250 taken");
        }

        private String usual(String verb) {
            return switch (verb) {
                case "EHLO" -> certificate == null ? "250 scripted.example" : "250-scripted.example\r\n250 STARTTLS";
                case "DATA" -> "354 go on";
                case "QUIT" -> "221 bye";
                case "STARTTLS" -> "220 go on";
                default -> "250 ok";
            };
        }

        private boolean answer(String verb, String usual) throws IOException {
            String answer = answers.getOrDefault(verb, usual);
            if (answer.equals(DROP)) {
                client.close();
                return false;
            }
            if (answer.equals(HALF_CLOSE)) {
                client.shutdownOutput();
                return hang(false);
            }
            if (answer.equals(SILENCE)) return hang(false);
            if (answer.equals(DRIP)) return hang(true);
            OutputStream out = client.getOutputStream();
            out.write((answer + "\r\n").getBytes(US_ASCII));
            out.flush();
            return true;
        }

        private boolean hang(boolean drip) throws IOException {
            OutputStream out = client.getOutputStream();
            while (!listener.isClosed()) {
                if (drip) {
                    out.write('2');
                    out.flush();
                }
                try {
                    Thread.sleep(100);
                } catch (InterruptedException e) {
                    return false;
                }
            }
            return false;
        }

        private BufferedReader reader() throws IOException {
            return new BufferedReader(new InputStreamReader(client.getInputStream(), US_ASCII));
        }

        private BufferedReader secured() throws IOException {
            SSLSocket secure = (SSLSocket) certificate
                    .getSocketFactory()
                    .createSocket(client, client.getInetAddress().getHostAddress(), client.getPort(), true);
            secure.setUseClientMode(false);
            secure.startHandshake();
            client = secure;
            return reader();
        }
    }

    @Override
    public void close() throws IOException {
        listener.close();
        for (Talk talk : talks) talk.client.close();
    }
}
