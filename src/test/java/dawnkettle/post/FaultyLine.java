package dawnkettle.post;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Random;

/** A mailbox that answers as an IMAP server does until a command comes, and then goes wrong in one way. */
final class FaultyLine implements AutoCloseable {
    /** How it goes wrong. */
    enum Fault {
        DROP,
        SILENCE,
        DRIP,
        HALF_CLOSE,
        GARBAGE,
        BAD
    }

    private final ServerSocket listener = new ServerSocket(0, 5, InetAddress.getLoopbackAddress());
    private final String command;
    private final Fault fault;
    private volatile Socket client;

    /** @param command at which it goes wrong; GREETING before any */
    FaultyLine(String command, Fault fault) throws IOException {
        this.command = command;
        this.fault = fault;
        Thread thread = new Thread(this::serve, "faulty line");
        thread.setDaemon(true);
        thread.start();
    }

    int port() {
        return listener.getLocalPort();
    }

    private void serve() {
        try (Socket accepted = listener.accept()) {
            client = accepted;
            talk(accepted);
        } catch (IOException closed) {
            // the test is over, or the client has had enough
        }
    }

    private void talk(Socket line) throws IOException {
        BufferedReader in = new BufferedReader(new InputStreamReader(line.getInputStream(), ISO_8859_1));
        if (command.equals("GREETING")) {
            fail(line, "*");
            return;
        }
        say(line, "* OK ready");
        for (String heard = in.readLine(); heard != null; heard = in.readLine()) {
            String[] words = heard.split(" ");
            if (words[1].equals(command)) {
                fail(line, words[0]);
                return;
            }
            answer(line, words[0], words[1]);
        }
    }

    private void answer(Socket line, String tag, String verb) throws IOException {
        if (verb.equals("CAPABILITY")) say(line, "* CAPABILITY IMAP4rev1");
        if (verb.equals("SELECT"))
            say(
                    line,
                    "* 2 EXISTS\r\n* FLAGS (\\Seen)\r\n* OK [PERMANENTFLAGS (\\Seen \\*)] x\r\n"
                            + "* OK [UIDVALIDITY 7] x\r\n* OK [UIDNEXT 9] x");
        say(line, tag + " OK done");
    }

    private static void say(Socket line, String words) throws IOException {
        line.getOutputStream().write((words + "\r\n").getBytes(ISO_8859_1));
        line.getOutputStream().flush();
    }

    private void fail(Socket line, String tag) throws IOException {
        switch (fault) {
            case DROP -> line.close();
            case BAD -> say(line, tag + " BAD no");
            case GARBAGE -> garbage(line.getOutputStream());
            case HALF_CLOSE -> line.shutdownOutput();
            default -> {}
        }
        while (!listener.isClosed() && fault != Fault.DROP) {
            if (fault == Fault.DRIP) line.getOutputStream().write('*');
            try {
                Thread.sleep(100);
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    private static void garbage(OutputStream out) throws IOException {
        byte[] bytes = new byte[20_000];
        new Random(5).nextBytes(bytes);
        out.write("* 1 FETCH (FLAGS ({99999999999\r\n".getBytes(ISO_8859_1));
        out.write(bytes);
        out.write("\r\n".getBytes(ISO_8859_1));
        out.flush();
    }

    @Override
    public void close() throws IOException {
        listener.close();
        if (client != null) client.close();
    }
}
