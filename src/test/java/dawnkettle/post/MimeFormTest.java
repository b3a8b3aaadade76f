package dawnkettle.post;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.cost.WeekBook;
import dawnkettle.cost.WeekCosts;
import dawnkettle.draw.ChartPictures;
import dawnkettle.mail.Bytes;
import dawnkettle.mail.CostReport;
import dawnkettle.mail.Mail;
import dawnkettle.mail.Millrace;
import dawnkettle.mail.MillraceHalfYear;
import dawnkettle.shop.Shop;
import dawnkettle.trouble.DeviceAway;
import jakarta.mail.BodyPart;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimeUtility;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.TimeZone;
import javax.imageio.ImageIO;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class MimeFormTest {
    static final Instant DAWN = Instant.parse("2026-12-04T10:35:00Z");
    private static final ZoneId ZONE = ZoneId.of("America/New_York");
    private static final MimeForm FORM = new MimeForm("clerk@millrace.example", ZONE);

    static Mail mail(String subject) {
        Bytes png = Bytes.of(new byte[] {(byte) 0x89, 'P', 'N', 'G', 0, 1, 2, (byte) 0xff});
        return new Mail(
                "2026-12-04.summary.1",
                List.of("owner@millrace.example", "books@millrace.example"),
                subject,
                new Mail.Body(
                        "Blöcke 豆腐\n.a line that begins with a dot\n" + "x".repeat(2_000) + "\n",
                        "<p>Blöcke 豆腐 <img src=\"cid:price@2026-12-04.summary.1\" alt=\"\"></p>\n",
                        List.of(new Mail.Picture("price", png, "price"))),
                List.of(new Mail.Attachment(
                        "costs.csv", "text/csv; charset=utf-8", Bytes.of("a,b\r\n".getBytes(UTF_8)))));
    }

    private static MimeMessage parsed(byte[] bytes) throws Exception {
        return new MimeMessage(Session.getInstance(new Properties()), new ByteArrayInputStream(bytes));
    }

    @Test
    void what_is_sent_reads_back_as_what_was_written() throws Exception {
        MimeMessage message = parsed(FORM.bytes(mail("Tofu – nuit 豆腐"), DAWN));
        assertThat(message.getSubject()).isEqualTo("Tofu – nuit 豆腐");
        assertThat(message.getFrom()).extracting(Object::toString).containsExactly("clerk@millrace.example");
        assertThat(message.getAllRecipients())
                .extracting(Object::toString)
                .containsExactly("owner@millrace.example", "books@millrace.example");
        assertThat(message.getSentDate()).isEqualTo(Date.from(DAWN));
        assertThat(message.getMessageID()).isEqualTo("<2026-12-04.summary.1@millrace.example>");
        assertThat(message.getHeader("Auto-Submitted")).containsExactly("auto-generated");
        assertThat(message.getHeader("MIME-Version")).containsExactly("1.0");

        MimeMultipart mixed = (MimeMultipart) message.getContent();
        assertThat(mixed.getContentType()).startsWith("multipart/mixed");
        MimeMultipart alternative = (MimeMultipart) mixed.getBodyPart(0).getContent();
        assertThat(alternative.getContentType()).startsWith("multipart/alternative");
        assertThat((String) alternative.getBodyPart(0).getContent())
                .isEqualToNormalizingNewlines(mail("x").body().text());
        MimeMultipart related = (MimeMultipart) alternative.getBodyPart(1).getContent();
        assertThat(related.getContentType()).startsWith("multipart/related");
        assertThat((String) related.getBodyPart(0).getContent())
                .isEqualToNormalizingNewlines(mail("x").body().html());
        BodyPart picture = related.getBodyPart(1);
        assertThat(picture.getHeader("Content-ID")).containsExactly("<price@2026-12-04.summary.1>");
        assertThat(Bytes.of(picture.getInputStream().readAllBytes()))
                .isEqualTo(mail("x").body().pictures().get(0).png());
        BodyPart file = mixed.getBodyPart(1);
        assertThat(file.getFileName()).isEqualTo("costs.csv");
        assertThat(file.getDisposition()).isEqualTo("attachment");
        assertThat(new String(file.getInputStream().readAllBytes(), UTF_8)).isEqualTo("a,b\r\n");
    }

    @Test
    void a_mail_without_pictures_or_files_is_plain_text_beside_html() throws Exception {
        Mail mail = new Mail("a.1", List.of(), "s", new Mail.Body("t\n", "<p>t</p>\n", List.of()), List.of());
        MimeMultipart content = (MimeMultipart) parsed(FORM.bytes(mail, DAWN)).getContent();
        assertThat(content.getContentType()).startsWith("multipart/alternative");
        assertThat(content.getBodyPart(1).getContentType()).startsWith("text/html");
    }

    @Test
    void the_weekly_report_carries_the_picture_that_its_html_shows() throws Exception {
        Shop shop = Millrace.shop();
        Mail report =
                CostReport.of(WeekBook.of(WeekCosts.byWeek(MillraceHalfYear.days(), shop), shop), new ChartPictures());
        MimeMultipart mixed = (MimeMultipart) parsed(FORM.bytes(report, DAWN)).getContent();
        MimeMultipart alternative = (MimeMultipart) mixed.getBodyPart(0).getContent();
        MimeMultipart related = (MimeMultipart) alternative.getBodyPart(1).getContent();
        String id = related.getBodyPart(1).getHeader("Content-ID")[0].replaceAll("[<>]", "");
        assertThat((String) related.getBodyPart(0).getContent()).contains("<img src=\"cid:" + id + "\"");
        BufferedImage picture = ImageIO.read(related.getBodyPart(1).getInputStream());
        assertThat(picture.getWidth()).isEqualTo(720);
        assertThat(mixed.getBodyPart(1).getFileName()).isEqualTo("costs-2026-W48.csv");
    }

    /** RFC 2047 section 2; the encoded form was computed with the standard library of another language. */
    @Test
    void a_subject_beyond_ascii_becomes_an_encoded_word() throws Exception {
        String word = "=?utf-8?b?VG9mdSDigJMgbnVpdCDosYbohZA=?=";
        assertThat(header("Subject", FORM.bytes(mail("Tofu – nuit 豆腐"), DAWN))).isEqualTo(word);
        assertThat(MimeUtility.decodeText(word)).isEqualTo("Tofu – nuit 豆腐");
    }

    @Test
    void a_long_subject_is_broken_into_words_of_at_most_75_characters() throws Exception {
        String subject = "Versäumt: ".repeat(30).strip();
        byte[] bytes = FORM.bytes(mail(subject), DAWN);
        String folded = headerLines("Subject", bytes);
        assertThat(folded.split("\r\n")).hasSizeGreaterThan(3).allMatch(line -> line.length() <= 76);
        assertThat(folded.split("[\\s]+"))
                .filteredOn(word -> word.startsWith("=?"))
                .allMatch(word -> word.length() <= 75);
        assertThat(parsed(bytes).getSubject()).isEqualTo(subject);
    }

    /** RFC 5322 section 2.1.1: 998 characters at most, 78 wanted; section 2.3: CR and LF only together. */
    @Test
    void lines_are_short_and_end_in_cr_lf() {
        String message = new String(FORM.bytes(mail("x".repeat(300)), DAWN), UTF_8);
        assertThat(message.replace("\r\n", "")).doesNotContain("\r", "\n");
        assertThat(message.split("\r\n")).allMatch(line -> line.length() <= 998);
        assertThat(message.split("\r\n"))
                .filteredOn(line -> !line.startsWith("Subject"))
                .allMatch(line -> line.length() <= 78);
        assertThat(message.chars()).allMatch(c -> c < 128);
    }

    @Test
    void the_date_is_written_in_the_shops_zone() {
        assertThat(header("Date", FORM.bytes(mail("s"), DAWN))).isEqualTo("Fri, 4 Dec 2026 05:35:00 -0500");
        byte[] utc = new MimeForm("clerk@millrace.example", ZoneId.of("UTC")).bytes(mail("s"), DAWN);
        assertThat(header("Date", utc)).isEqualTo("Fri, 4 Dec 2026 10:35:00 +0000");
    }

    @Test
    void the_same_mail_gives_the_same_bytes_on_every_machine() {
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        byte[] here = FORM.bytes(mail("Tofu – nuit 豆腐"), DAWN);
        try {
            Locale.setDefault(Locale.GERMANY);
            TimeZone.setDefault(TimeZone.getTimeZone("Asia/Tokyo"));
            assertThat(FORM.bytes(mail("Tofu – nuit 豆腐"), DAWN)).isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Property(tries = 500)
    void no_subject_can_add_a_header(@ForAll String subject) throws Exception {
        // U+760D and U+760A end in the bytes of CR and LF: CVE-2025-7962.
        Mail mail = mail(subject + "\r\nBcc: thief@elsewhere.example\n\nBody\u2028Bcc: x\u760D\u760Ay");
        byte[] bytes = FORM.bytes(mail, DAWN);
        MimeMessage message = parsed(bytes);
        assertThat(message.getHeader("Bcc")).isNull();
        assertThat(java.util.Collections.list(message.getAllHeaders()).stream().map(h -> h.getName()))
                .containsExactlyInAnyOrder(
                        "Date",
                        "From",
                        "To",
                        "Message-ID",
                        "Subject",
                        "MIME-Version",
                        "Content-Type",
                        "Auto-Submitted");
        assertThat(message.getContent()).isInstanceOf(MimeMultipart.class);
    }

    @Test
    void an_address_that_is_none_is_named_by_its_mail_and_not_by_itself() {
        Mail mail = mail("s").addressedTo(List.of("owner@millrace.example, thief@elsewhere.example"));
        assertThatThrownBy(() -> FORM.bytes(mail, DAWN))
                .isInstanceOf(DeviceAway.class)
                .hasMessage(
                        "mail 2026-12-04.summary.1: an address of it is not one; look at the mail addresses in conf/");
        assertThatThrownBy(() -> FORM.bytes(mail.addressedTo(List.of("a@b.example\r\nBcc: c@d.example")), DAWN))
                .isInstanceOf(DeviceAway.class);
    }

    private static String header(String name, byte[] message) {
        return headerLines(name, message).substring(name.length() + 2);
    }

    private static String headerLines(String name, byte[] message) {
        String head = new String(message, UTF_8).split("\r\n\r\n", 2)[0];
        int from = ("\r\n" + head).indexOf("\r\n" + name + ": ");
        String rest = head.substring(from);
        java.util.regex.Matcher end =
                java.util.regex.Pattern.compile("\r\n(?![ \t])").matcher(rest);
        return end.find() ? rest.substring(0, end.start()) : rest;
    }
}
