package dawnkettle.post;

import dawnkettle.mail.Arrived.Sender;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeUtility;
import java.io.UnsupportedEncodingException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Enumeration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads of a mail's headers who it is from, who vouches for it, and whether a person wrote it. */
final class ReadSender {
    /** Mail that nobody is to answer (RFC 3834 section 2, and common practice). */
    private static final List<String> PROGRAMS =
            List.of("mailer-daemon", "postmaster", "noreply", "no-reply", "donotreply", "do-not-reply");

    private static final List<String> PASSED_ON = List.of("bulk", "list", "junk", "auto_reply");

    /** Letters of a subject, as it is encoded, that are decoded: the mail library takes seconds over 100,000 (measured). */
    private static final int SUBJECT_READ = 2_000;

    /** Letters of a header of addresses that are read, for the same reason. */
    private static final int ADDRESSES_READ = 5_000;

    private final MimeMessage message;
    private final Vouching vouching;

    ReadSender(MimeMessage message, Vouching vouching) {
        this.message = message;
        this.vouching = vouching;
    }

    Sender sender() throws MessagingException {
        Optional<String> from = from();
        Optional<String> doubt = from.isEmpty()
                ? Optional.of("it does not say in one address who it is from")
                : vouching.doubt(all("Authentication-Results"), from.get());
        return new Sender(from, doubt, recipients(), isAutomatic(from));
    }

    /** The subject in plain letters, without anything that ends a line. */
    String subject() throws MessagingException {
        String whole = String.join(" ", all("Subject"));
        String subject = whole.substring(0, Math.min(whole.length(), SUBJECT_READ));
        try {
            subject = MimeUtility.decodeText(MimeUtility.unfold(subject));
        } catch (UnsupportedEncodingException unknown) {
            // as it is written
        }
        return subject.codePoints()
                .map(c -> Character.isISOControl(c) || c == 0x2028 || c == 0x2029 ? ' ' : c)
                .limit(200)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    /** A header's first value; empty where it is not there. */
    String first(String name) throws MessagingException {
        List<String> all = all(name);
        return all.isEmpty() ? "" : all.get(0);
    }

    private List<String> all(String name) throws MessagingException {
        String[] values = message.getHeader(name);
        return values == null ? List.of() : List.of(values);
    }

    /** The address of a From header that stands there once and holds one address. */
    private Optional<String> from() throws MessagingException {
        List<String> headers = all("From");
        if (headers.size() != 1 || headers.get(0).length() > ADDRESSES_READ) return Optional.empty();
        try {
            InternetAddress[] addresses = InternetAddress.parseHeader(headers.get(0), true);
            if (addresses.length != 1 || addresses[0].isGroup()) return Optional.empty();
            addresses[0].validate();
            return Optional.of(addresses[0].getAddress().toLowerCase(Locale.ROOT));
        } catch (AddressException notOne) {
            return Optional.empty();
        }
    }

    private List<String> recipients() throws MessagingException {
        List<String> to = new ArrayList<>();
        for (String name : List.of("To", "Cc", "Delivered-To", "X-Original-To"))
            for (String header : all(name)) to.addAll(addresses(header));
        return to;
    }

    private static List<String> addresses(String header) {
        String some = header.length() <= ADDRESSES_READ
                ? header
                : header.substring(0, Math.max(0, header.lastIndexOf(',', ADDRESSES_READ)));
        try {
            return Arrays.stream(InternetAddress.parseHeader(some, false))
                    .map(address -> String.valueOf(address.getAddress()).toLowerCase(Locale.ROOT))
                    .toList();
        } catch (AddressException notThem) {
            return List.of();
        }
    }

    private boolean isAutomatic(Optional<String> from) throws MessagingException {
        String submitted = first("Auto-Submitted").strip().toLowerCase(Locale.ROOT);
        boolean byProgram = !submitted.isEmpty() && !submitted.startsWith("no");
        boolean passedOn = PASSED_ON.contains(first("Precedence").strip().toLowerCase(Locale.ROOT)) || isOfList();
        boolean nobody = first("Return-Path").strip().equals("<>")
                || from.map(address -> PROGRAMS.contains(address.substring(0, address.indexOf('@'))))
                        .orElse(false)
                || message.isMimeType("multipart/report")
                || Stream.of("X-Autoreply", "X-Autorespond").anyMatch(this::has);
        return byProgram || passedOn || nobody;
    }

    private boolean isOfList() throws MessagingException {
        Enumeration<String> lines = message.getAllHeaderLines();
        while (lines.hasMoreElements())
            if (lines.nextElement().toLowerCase(Locale.ROOT).startsWith("list-")) return true;
        return false;
    }

    private boolean has(String name) {
        try {
            return message.getHeader(name) != null;
        } catch (MessagingException unreadable) {
            return true;
        }
    }
}
