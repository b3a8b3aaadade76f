package dawnkettle.paper;

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

/** A printer on this machine that answers as it is told, written from RFC 8010 by itself, not with our own encoder. */
final class ScriptedPrinter implements AutoCloseable {
    private final HttpServer server;
    final List<byte[]> asked = new ArrayList<>();
    final Deque<Integer> states = new ArrayDeque<>(List.of(9));
    int printStatus = 0;
    int httpStatus = 200;
    int cancelStatus = 0;
    boolean hangsUpOnPrint = false;
    boolean cutsAnswerShort = false;
    String reason = "none";

    ScriptedPrinter() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/ipp/print", this::answer);
        server.start();
    }

    URI address() {
        return URI.create("ipp://localhost:" + server.getAddress().getPort() + "/ipp/print");
    }

    int operations(int operation) {
        return (int)
                asked.stream().filter(bytes -> operation(bytes) == operation).count();
    }

    private static int operation(byte[] bytes) {
        return ByteBuffer.wrap(bytes).getShort(2);
    }

    private void answer(HttpExchange exchange) throws IOException {
        byte[] bytes = exchange.getRequestBody().readAllBytes();
        asked.add(bytes);
        int operation = operation(bytes);
        if (operation == 0x0002 && hangsUpOnPrint) {
            exchange.close();
            return;
        }
        byte[] answer = switch (operation) {
            case 0x0002 -> job(printStatus, 5);
            case 0x0009 -> job(0, states.size() > 1 ? states.poll() : states.peek());
            case 0x0008 -> bare(cancelStatus);
            default -> printer();
        };
        if (cutsAnswerShort) answer = Arrays.copyOf(answer, answer.length / 2);
        exchange.getResponseHeaders().add("Content-Type", "application/ipp");
        exchange.sendResponseHeaders(httpStatus, answer.length);
        exchange.getResponseBody().write(answer);
        exchange.close();
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

    private static byte[] job(int status, int state) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = begin(bytes, status);
        if (status > 0xFF) attribute(out, 0x41, "status-message", "not today");
        else {
            out.writeByte(0x02);
            number(out, 0x21, "job-id", 147);
            number(out, 0x23, "job-state", state);
            attribute(out, 0x44, "job-state-reasons", "none");
        }
        out.writeByte(0x03);
        return bytes.toByteArray();
    }

    private byte[] printer() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = begin(bytes, 0);
        out.writeByte(0x04);
        number(out, 0x23, "printer-state", 4);
        attribute(out, 0x44, "printer-state-reasons", reason);
        attribute(out, 0x44, "", "media-needed-warning");
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
