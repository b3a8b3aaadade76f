package dawnkettle.paper;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.util.List;

/** A request of the Internet Printing Protocol as bytes (RFC 8010 for the encoding, RFC 8011 for the words). */
final class IppRequest {
    static final int PRINT_JOB = 0x0002;
    static final int CANCEL_JOB = 0x0008;
    static final int GET_JOB_ATTRIBUTES = 0x0009;
    static final int GET_JOBS = 0x000A;
    static final int GET_PRINTER_ATTRIBUTES = 0x000B;

    private static final int OPERATION_GROUP = 0x01;
    private static final int JOB_GROUP = 0x02;
    private static final int END = 0x03;
    private static final int INTEGER = 0x21;
    private static final int BOOLEAN = 0x22;
    private static final int NAME = 0x42;
    private static final int KEYWORD = 0x44;
    private static final int URI_TAG = 0x45;
    private static final int CHARSET = 0x47;
    private static final int LANGUAGE = 0x48;
    private static final int MIME_TYPE = 0x49;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

    private IppRequest(int operation, URI printer) {
        two(0x0101);
        two(operation);
        two(0);
        two(1);
        bytes.write(OPERATION_GROUP);
        text(CHARSET, "attributes-charset", "utf-8");
        text(LANGUAGE, "attributes-natural-language", "en");
        text(URI_TAG, "printer-uri", printer.toString());
    }

    static IppRequest of(int operation, URI printer) {
        return new IppRequest(operation, printer);
    }

    static byte[] print(URI printer, JobTicket ticket, byte[] pdf) {
        IppRequest request = of(PRINT_JOB, printer).by();
        request.text(NAME, "job-name", ticket.name());
        request.text(MIME_TYPE, "document-format", "application/pdf");
        if (ticket.copies() > 1 || ticket.sides().isPresent()) request.bytes.write(JOB_GROUP);
        if (ticket.copies() > 1) request.number("copies", ticket.copies());
        ticket.sides().ifPresent(sides -> request.text(KEYWORD, "sides", sides));
        return request.ended(pdf);
    }

    /** Our own jobs, those that are over or those that are not. */
    static byte[] jobs(URI printer, String which) {
        IppRequest request = of(GET_JOBS, printer).by();
        request.text(KEYWORD, "which-jobs", which);
        request.yes("my-jobs");
        request.wanted("job-id", "job-name", "time-at-creation", "job-printer-up-time");
        return request.ended(new byte[0]);
    }

    static byte[] aboutJob(int operation, URI printer, int job) {
        IppRequest request = of(operation, printer);
        request.number("job-id", job);
        request.by();
        if (operation == GET_JOB_ATTRIBUTES)
            request.wanted("job-state", "job-state-reasons", "job-impressions-completed");
        return request.ended(new byte[0]);
    }

    static byte[] aboutPrinter(URI printer) {
        IppRequest request = of(GET_PRINTER_ATTRIBUTES, printer).by();
        request.wanted("printer-state", "printer-state-reasons");
        return request.ended(new byte[0]);
    }

    private IppRequest by() {
        text(NAME, "requesting-user-name", "dawnkettle");
        return this;
    }

    private void wanted(String... attributes) {
        String name = "requested-attributes";
        for (String attribute : List.of(attributes)) {
            text(KEYWORD, name, attribute);
            name = "";
        }
    }

    private void text(int tag, String name, String value) {
        bytes.write(tag);
        string(name);
        string(value);
    }

    private void number(String name, int value) {
        bytes.write(INTEGER);
        string(name);
        two(4);
        two(value >>> 16);
        two(value);
    }

    private void yes(String name) {
        bytes.write(BOOLEAN);
        string(name);
        two(1);
        bytes.write(1);
    }

    private void string(String value) {
        byte[] encoded = value.getBytes(UTF_8);
        two(encoded.length);
        bytes.writeBytes(encoded);
    }

    private void two(int value) {
        bytes.write(value >>> 8);
        bytes.write(value);
    }

    private byte[] ended(byte[] document) {
        bytes.write(END);
        bytes.writeBytes(document);
        return bytes.toByteArray();
    }
}
