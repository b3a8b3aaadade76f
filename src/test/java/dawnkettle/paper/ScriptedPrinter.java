package dawnkettle.paper;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.Executors;

/** A printer on this machine that answers as it is told, written from RFC 8010 by itself, not with our own encoder. */
public final class ScriptedPrinter implements AutoCloseable {
    private static final int PRINT_JOB = 0x0002;

    private final HttpServer server;
    public final List<byte[]> asked = new ArrayList<>();
    public final Deque<Integer> states = new ArrayDeque<>(List.of(9));

    /** Jobs that stand in the queue: number, name, seconds that they have stood there. */
    public final List<Waiting> waiting = new ArrayList<>();

    public int printStatus = 0;
    public int httpStatus = 200;
    public int cancelStatus = 0;
    public boolean hangsUpOnPrint = false;
    public boolean keepsWhatItHungUpOn = false;
    public boolean diesAfterTaking = false;
    public boolean cutsAnswerShort = false;
    public int printerState = 4;
    public String reason = "none";
    public int impressions = 0;

    /** A job of somebody, perhaps of ours. */
    public record Waiting(int job, String name, int seconds) {}

    public ScriptedPrinter() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/ipp/print", this::answer);
        server.setExecutor(Executors.newCachedThreadPool(work -> {
            Thread thread = new Thread(work, "scripted printer");
            thread.setDaemon(true);
            return thread;
        }));
        server.start();
    }

    public URI address() {
        return URI.create("ipp://localhost:" + server.getAddress().getPort() + "/ipp/print");
    }

    public int operations(int operation) {
        return (int)
                asked.stream().filter(bytes -> operation(bytes) == operation).count();
    }

    /** The last request of that operation. */
    public byte[] last(int operation) {
        return asked.stream()
                .filter(bytes -> operation(bytes) == operation)
                .reduce((one, other) -> other)
                .orElseThrow();
    }

    /** The numbers of the jobs that it was told to cancel. */
    public List<Integer> cancelled() {
        return asked.stream()
                .filter(bytes -> operation(bytes) == 0x0008)
                .map(bytes -> ByteBuffer.wrap(bytes).getInt(after(bytes, "job-id") + 2))
                .toList();
    }

    private static int operation(byte[] bytes) {
        return ByteBuffer.wrap(bytes).getShort(2);
    }

    /** Where the length of an attribute's value stands. */
    private static int after(byte[] bytes, String attribute) {
        return new String(bytes, ISO_8859_1).indexOf(attribute) + attribute.length();
    }

    private static String jobName(byte[] bytes) {
        int at = after(bytes, "job-name");
        return new String(bytes, at + 2, ByteBuffer.wrap(bytes).getShort(at), UTF_8);
    }

    private synchronized void answer(HttpExchange exchange) throws IOException {
        byte[] bytes = exchange.getRequestBody().readAllBytes();
        asked.add(bytes);
        int operation = operation(bytes);
        if (operation == PRINT_JOB && hangsUpOnPrint) {
            if (keepsWhatItHungUpOn) waiting.add(new Waiting(147, jobName(bytes), 0));
            exchange.close();
            return;
        }
        byte[] answer = answer(operation);
        if (cutsAnswerShort) answer = Arrays.copyOf(answer, answer.length / 2);
        exchange.getResponseHeaders().add("Content-Type", "application/ipp");
        exchange.sendResponseHeaders(httpStatus, answer.length);
        exchange.getResponseBody().write(answer);
        exchange.close();
        if (operation == PRINT_JOB && diesAfterTaking) server.stop(0);
    }

    private byte[] answer(int operation) throws IOException {
        return switch (operation) {
            case PRINT_JOB -> job(printStatus, 5);
            case 0x0009 -> job(0, states.size() > 1 ? states.poll() : states.peek());
            case 0x0008 -> bare(cancelStatus);
            case 0x000A -> jobs();
            default -> printer();
        };
    }

    private static DataOutputStream begin(ByteArrayOutputStream bytes, int status) throws IOException {
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeShort(0x0101);
        out.writeShort(status);
        out.writeInt(1);
        out.writeByte(0x01);
        attribute(out, 0x47, "attributes-charset", "utf-8");
        attribute(out, 0x48, "attributes-natural-language", "en");
        return out;
    }

    private static byte[] bare(int status) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        begin(bytes, status).writeByte(0x03);
        return bytes.toByteArray();
    }

    private byte[] job(int status, int state) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = begin(bytes, status);
        if (status > 0xFF) attribute(out, 0x41, "status-message", "not today");
        else {
            out.writeByte(0x02);
            number(out, 0x21, "job-id", 147);
            number(out, 0x23, "job-state", state);
            attribute(out, 0x44, "job-state-reasons", "none");
            number(out, 0x21, "job-impressions-completed", impressions);
        }
        out.writeByte(0x03);
        return bytes.toByteArray();
    }

    private byte[] jobs() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = begin(bytes, 0);
        for (Waiting job : waiting) {
            out.writeByte(0x02);
            number(out, 0x21, "job-id", job.job());
            attribute(out, 0x42, "job-name", job.name());
            number(out, 0x21, "time-at-creation", 1_764_000_000 - job.seconds());
            number(out, 0x21, "job-printer-up-time", 1_764_000_000);
        }
        out.writeByte(0x03);
        return bytes.toByteArray();
    }

    private byte[] printer() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = begin(bytes, 0);
        out.writeByte(0x04);
        number(out, 0x23, "printer-state", printerState);
        attribute(out, 0x44, "printer-state-reasons", reason);
        if (reason.startsWith("media-empty")) attribute(out, 0x44, "", "media-needed-warning");
        out.writeByte(0x03);
        return bytes.toByteArray();
    }

    private static void attribute(DataOutputStream out, int tag, String name, String value) throws IOException {
        out.writeByte(tag);
        out.writeUTF(name);
        out.writeUTF(value);
    }

    private static void number(DataOutputStream out, int tag, String name, int value) throws IOException {
        out.writeByte(tag);
        out.writeUTF(name);
        out.writeShort(4);
        out.writeInt(value);
    }

    @Override
    public void close() {
        server.stop(0);
    }
}
