package dawnkettle.post;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Arrived;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Mails that are made to be hard to read are refused quickly, and those that are only odd are read. */
@Timeout(30)
class ReadArrivedTest {
    private static final Instant AT = Instant.parse("2026-12-02T17:00:00Z");
    private static final String HEAD =
            "From: a@kitchen.example\r\nSubject: =?utf-8?q?4_buckets=0D=0ABcc:_x?=\r\nDate: Wed, 2 Dec 2026 11:58:00 -0500\r\n"
                    + "Message-ID: <1@kitchen.example>\r\nMIME-Version: 1.0\r\n";

    private final ReadArrived reading = new ReadArrived(new Vouching("mx.millrace.example"));

    private Arrived read(String raw) {
        return reading.read(new Arrived.Place(7, 1), raw.getBytes(UTF_8), AT);
    }

    @Test
    void two_hundred_thousand_empty_parts_are_refused_at_once() {
        long start = System.nanoTime();
        Arrived mail = read(HEAD + "Content-Type: multipart/mixed; boundary=b\r\n\r\n" + "--b\r\n".repeat(200_000));
        assertThat(mail.refused()).contains("it has more than 50 parts");
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
    }

    @Test
    void three_thousand_parts_within_each_other_are_refused_at_once() {
        StringBuilder raw = new StringBuilder(HEAD).append("Content-Type: multipart/mixed; boundary=b0\r\n\r\n");
        for (int i = 0; i < 3_000; i++)
            raw.append("--b")
                    .append(i)
                    .append("\r\nContent-Type: multipart/mixed; boundary=b")
                    .append(i + 1)
                    .append("\r\n\r\n");
        long start = System.nanoTime();
        assertThat(read(raw.toString()).refused()).isPresent();
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
    }

    @Test
    void fifty_parts_are_read_and_fifty_one_are_not_and_so_for_ten_deep() {
        assertThat(flat(49).refused()).isEmpty();
        assertThat(flat(50).refused()).contains("it has more than 50 parts");
        assertThat(deep(9).refused()).isEmpty();
        assertThat(deep(10).refused()).contains("its parts lie more than 10 deep");
    }

    private Arrived flat(int parts) {
        return read(HEAD + "Content-Type: multipart/mixed; boundary=b\r\n\r\n"
                + "--b\r\nContent-Type: text/plain\r\n\r\nx\r\n".repeat(parts) + "--b--\r\n");
    }

    private Arrived deep(int levels) {
        StringBuilder raw = new StringBuilder(HEAD).append("Content-Type: multipart/mixed; boundary=b0\r\n\r\n");
        for (int i = 0; i < levels - 1; i++)
            raw.append("--b")
                    .append(i)
                    .append("\r\nContent-Type: multipart/mixed; boundary=b")
                    .append(i + 1)
                    .append("\r\n\r\n");
        raw.append("--b").append(levels - 1).append("\r\nContent-Type: text/plain\r\n\r\n4 buckets\r\n");
        return read(raw.toString());
    }

    @Test
    void a_subject_can_not_end_a_line() {
        Arrived mail = read(HEAD + "\r\n4 buckets firm\r\n");
        assertThat(mail.content().subject()).isEqualTo("4 buckets  Bcc: x");
        assertThat(mail.content().body()).contains("4 buckets firm");
        assertThat(mail.sender().from()).isEqualTo(Optional.of("a@kitchen.example"));
    }

    /** Broken in one way each, of up to a megabyte: read as far as it goes, or refused, and never slowly. */
    @Test
    void mails_that_are_broken_or_made_to_be_slow_end_soon_and_as_they_should() {
        String big = "x".repeat(900_000);
        Map<String, String> read = new LinkedHashMap<>();
        Map<String, String> refused = new LinkedHashMap<>();
        read.put("a charset that is none", HEAD + "Content-Type: text/plain; charset=x-none\r\n\r\n4 firm\r\n");
        read.put("NULs", HEAD + "\r\n4\0 firm\0\r\n" + "\0".repeat(500_000));
        read.put(
                "broken quoted-printable",
                HEAD
                        + "Content-Type: text/plain\r\nContent-Transfer-Encoding: quoted-printable\r\n\r\n4 firm=ZZ=\r\n=");
        read.put("a type that is none", HEAD + "Content-Type: ;;;=\r\n\r\n4 firm\r\n");
        read.put("no end", HEAD + "Content-Type: multipart/mixed; boundary=b\r\n\r\n--b\r\n\r\n4 firm");
        read.put("a line of 900,000", HEAD + "\r\n4 firm " + big);
        read.put(
                "broken encoded words",
                HEAD.replace("Subject: ", "Subject: =?utf-8?b?====?= =?x?y?z?= ") + "\r\n4 firm\r\n");
        String base64 = "Content-Type: text/plain\r\nContent-Transfer-Encoding: base64\r\n\r\nNCBmaXJt$$$=\r\n!!!\r\n";
        for (String broken : List.of(base64, "Content-Type: multipart/mixed\r\n\r\n4 firm\r\n"))
            assertThat(soon(broken, HEAD + broken).refused()).as(broken).contains("it can't be read");
        for (String name : List.of("Subject", "From", "To", "Authentication-Results", "Content-Type", "X-Any"))
            for (String words : List.of(
                    big, "a@b.example, ".repeat(70_000), "(".repeat(900_000), "=?utf-8?q?=41?= ".repeat(55_000)))
                refused.put(
                        "a head of a megabyte: " + name + words.charAt(0),
                        name + ": " + words + "\r\n" + HEAD + "\r\n4 firm\r\n");
        refused.put("200,000 headers", "A: b\r\n".repeat(180_000) + HEAD + "\r\n4 firm\r\n");
        refused.put("no body at all", "A".repeat(1_000_000));
        read.forEach(
                (name, raw) -> assertThat(soon(name, raw).refused()).as(name).isEmpty());
        refused.forEach((name, raw) ->
                assertThat(soon(name, raw).refused()).as(name).contains("its head is larger than 100 kB"));
        for (String words : List.of("(", "\"", ",", "a@b.example, ", "=?utf-8?q?=41?= ", "<", "\\", "; "))
            for (String name : List.of("Subject", "From", "To", "Authentication-Results", "Content-Type"))
                soon(
                        name + " " + words,
                        name + ": " + words.repeat(95_000 / words.length()) + "\r\n" + HEAD + "\r\nx\r\n");
    }

    private Arrived soon(String name, String raw) {
        long start = System.nanoTime();
        Arrived mail = read(raw);
        assertThat(Duration.ofNanos(System.nanoTime() - start)).as(name).isLessThan(Duration.ofSeconds(3));
        return mail;
    }

    @Test
    void garbage_is_read_as_nothing_or_refused_and_never_throws() {
        Random random = new Random(17);
        for (int i = 0; i < 300; i++) {
            byte[] bytes = new byte[random.nextInt(3_000)];
            random.nextBytes(bytes);
            Arrived mail = reading.read(new Arrived.Place(7, i), bytes, AT);
            assertThat(mail.sender().doubt()).isPresent();
        }
    }

    @Test
    void a_time_from_the_future_counts_as_the_time_it_came() {
        Arrived mail = read(HEAD.replace("2 Dec", "9 Dec").replace("Wed", "Wed") + "\r\nx\r\n");
        assertThat(mail.content().written()).isEqualTo(AT);
    }

    @Test
    void the_plain_words_count_before_the_html_and_attached_pictures_are_not_opened() {
        Arrived mail = read(
                HEAD + "Content-Type: multipart/alternative; boundary=b\r\n\r\n"
                        + "--b\r\nContent-Type: text/html\r\n\r\n<p>nine</p>\r\n"
                        + "--b\r\nContent-Type: text/plain; charset=iso-8859-1\r\n\r\nfour\r\n"
                        + "--b\r\nContent-Type: application/zip; name=x.zip\r\nContent-Disposition: attachment\r\n\r\nPK\r\n--b--\r\n");
        assertThat(mail.content().body()).contains("four").doesNotContain("nine");
        assertThat(mail.content().tables()).isEmpty();
    }
}
