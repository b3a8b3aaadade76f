package dawnkettle.paper;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;

/** One question, one answer, over HTTP as IPP has it (RFC 8010, 3 and 4). */
final class IppLine {
    /** IANA: ipp. */
    private static final int PORT = 631;

    private static final Duration TO_CONNECT = Duration.ofSeconds(5);
    private static final Duration MOST_TO_ANSWER = Duration.ofSeconds(30);

    private final URI printer;
    private final URI http;
    private final Duration toAnswer;
    private final HttpClient client;

    IppLine(URI printer, Duration patience) {
        this.printer = printer;
        this.http = http(printer);
        this.toAnswer = patience.compareTo(MOST_TO_ANSWER) < 0 ? patience : MOST_TO_ANSWER;
        this.client = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .connectTimeout(TO_CONNECT)
                .build();
    }

    /** HTTP said no (4xx), so that no job was made. */
    static final class Refused extends IOException {
        private static final long serialVersionUID = 1L;

        Refused(int status) {
            super("HTTP status " + status);
        }
    }

    URI printer() {
        return printer;
    }

    /** The address without a name or password that may stand in it. */
    String shown() {
        return printer.getScheme() + "://" + printer.getHost() + printer.getPath();
    }

    private static URI http(URI printer) {
        String scheme = switch (printer.getScheme()) {
            case "ipp", "http" -> "http";
            case "ipps", "https" -> "https";
            default ->
                throw new IllegalArgumentException("print queue \"" + printer + "\" must begin with ipp:// or ipps://");
        };
        boolean usual = printer.getPort() < 0 && printer.getScheme().startsWith("ipp");
        int port = usual ? PORT : printer.getPort();
        return URI.create(scheme + "://" + printer.getHost() + (port < 0 ? "" : ":" + port) + printer.getRawPath());
    }

    IppAnswer ask(byte[] request) throws IOException {
        HttpRequest post = HttpRequest.newBuilder(http)
                .timeout(toAnswer)
                .header("Content-Type", "application/ipp")
                .POST(HttpRequest.BodyPublishers.ofByteArray(request))
                .build();
        try {
            HttpResponse<byte[]> answer = client.send(post, HttpResponse.BodyHandlers.ofByteArray());
            int status = answer.statusCode();
            if (status >= 400 && status < 500) throw new Refused(status);
            if (status != 200) throw new IOException("HTTP status " + status);
            return IppAnswer.read(answer.body());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw (IOException) new InterruptedIOException("left while waiting for an answer").initCause(e);
        }
    }
}
