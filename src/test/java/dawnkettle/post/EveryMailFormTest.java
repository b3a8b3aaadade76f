package dawnkettle.post;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.EveryMail;
import dawnkettle.mail.Mail;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Every kind of mail, on the fullest day and the worst, as it stands on the wire and on a phone. */
class EveryMailFormTest {
    /** Larger ones are cut off by a program that many phones have (common practice, no source). */
    private static final int MOST_HTML = 60 * 1024;

    private static final Map<String, Mail> MAILS = new EveryMail().all();
    private static final MimeForm FORM = new MimeForm(
            "clerk@millrace.example", Optional.of("orders@millrace.example"), ZoneId.of("America/New_York"));

    private static byte[] bytes(Mail mail) {
        return FORM.bytes(mail, MimeFormTest.DAWN);
    }

    @Test
    void html_is_short_and_fetches_nothing() throws Exception {
        MAILS.forEach((name, mail) -> {
            String html = mail.body().html();
            assertThat(html.getBytes(UTF_8)).as(name).hasSizeLessThanOrEqualTo(MOST_HTML);
            assertThat(html)
                    .as(name)
                    .doesNotContainIgnoringCase("http:")
                    .doesNotContainIgnoringCase("https:")
                    .doesNotContainIgnoringCase("url(")
                    .doesNotContainIgnoringCase("<link")
                    .doesNotContainIgnoringCase("<script")
                    .doesNotContainIgnoringCase("@import");
            assertThat(all("src=\"([^\"]*)\"", html)).as(name).allMatch(src -> src.startsWith("cid:"));
        });
        leaveThemToBeLookedAt();
    }

    private static void leaveThemToBeLookedAt() throws Exception {
        Path folder = Files.createDirectories(Path.of("target/mails"));
        for (Map.Entry<String, Mail> mail : MAILS.entrySet())
            Files.write(folder.resolve(mail.getKey() + ".eml"), bytes(mail.getValue()));
    }

    /** WCAG 2.2, 1.1.1 and 1.3.1: what a picture shows stands in words, and a table says what its rows and columns are. */
    @Test
    void pictures_have_words_and_tables_have_heads_and_the_page_has_a_language_and_a_title() {
        MAILS.forEach((name, mail) -> {
            String html = mail.body().html();
            assertThat(all("<img[^>]*>", html)).as(name).allMatch(img -> img.matches(".*alt=\"[^\"]{20,}\".*"));
            assertThat(all("(?s)<table.*?</table>", html))
                    .as(name)
                    .allMatch(table -> table.contains("<caption>")
                            && table.contains("<th scope=\"col\"")
                            && table.contains("<th scope=\"row\""));
            assertThat(html).as(name).contains("<html lang=\"en\">").containsPattern("<title>[^<]{5,}</title>");
            assertThat(all("<h1>", html)).as(name).hasSize(1);
            mail.body()
                    .pictures()
                    .forEach(picture -> assertThat(mail.body().text())
                            .as(name)
                            .contains(picture.alternative().split(" ")[0]));
        });
    }

    /** What is shown beside the subject before the mail is opened says the verdict, not the shop's name. */
    @Test
    void what_a_phone_shows_before_a_mail_is_opened_is_its_verdict() {
        MAILS.forEach((name, mail) -> {
            String text = mail.body().html().replaceAll("(?s)^.*?<body>\n<div[^>]*>", "");
            String first = text.substring(0, text.indexOf("</div>"));
            assertThat(first).as(name).isNotBlank().hasSizeLessThan(280).doesNotContain("<");
            assertThat(mail.body().text().replaceAll("\\s+", " "))
                    .as(name)
                    .startsWith(first.replace("\u00A0", " ")
                            .replaceAll("&[a-z#0-9]+;.*| …$", "")
                            .strip());
        });
    }

    /** RFC 5322, 2.1.1 (998, better 78) and 2.3; RFC 2045, 6.7 (76); RFC 2047, 2 (75 a word, 76 a line). */
    @Test
    void no_line_is_longer_than_78_and_all_is_ascii() {
        MAILS.forEach((name, mail) -> {
            String message = new String(bytes(mail), UTF_8);
            assertThat(message.chars().allMatch(c -> c < 128)).as(name).isTrue();
            assertThat(message.replace("\r\n", "")).as(name).doesNotContain("\r", "\n");
            assertThat(List.of(message.split("\r\n"))).as(name).allMatch(line -> line.length() <= 78);
            assertThat(List.of(message.split("\r\n")))
                    .as(name)
                    .filteredOn(line -> line.contains("=?utf-8?"))
                    .allMatch(line -> line.length() <= 76);
            assertThat(List.of(mail.body().text().split("\n"))).as(name).allMatch(line -> line.length() <= 72);
        });
    }

    @Test
    void every_mail_reads_back_and_says_that_a_program_wrote_it_and_where_answers_go() throws Exception {
        for (Map.Entry<String, Mail> entry : MAILS.entrySet()) {
            Mail mail = entry.getValue();
            MimeMessage read =
                    new MimeMessage(Session.getInstance(new Properties()), new ByteArrayInputStream(bytes(mail)));
            assertThat(read.getSubject()).isEqualTo(mail.subject());
            assertThat(read.getMessageID()).isEqualTo("<" + mail.id() + "@millrace.example>");
            assertThat(read.getReplyTo()[0]).hasToString("orders@millrace.example");
            boolean answers = entry.getKey().startsWith("reply");
            assertThat(read.getHeader("Auto-Submitted"))
                    .as(entry.getKey())
                    .containsExactly(answers ? "auto-replied" : "auto-generated");
            assertThat(read.getHeader("In-Reply-To")).isEqualTo(answers ? new String[] {"<1@kitchen.example>"} : null);
            assertThat(FORM.bytes(mail, MimeFormTest.DAWN)).as("the same again").isEqualTo(bytes(mail));
        }
    }

    @Test
    void a_recall_is_a_list_that_a_phone_can_show_and_has_every_customer_in_its_table() {
        Mail recall = MAILS.get("recall");
        assertThat(recall.body()
                        .text()
                        .lines()
                        .filter(line -> line.startsWith("- "))
                        .count())
                .isGreaterThan(10);
        assertThat(recall.body().html()).doesNotContain("<table");
        assertThat(recall.attachments())
                .extracting(Mail.Attachment::name)
                .containsExactly("recall-drill-2026-12-04.csv");
    }

    private static List<String> all(String pattern, String text) {
        List<String> found = new ArrayList<>();
        Matcher matcher = Pattern.compile(pattern).matcher(text);
        while (matcher.find()) found.add(matcher.group(matcher.groupCount()));
        return found;
    }
}
