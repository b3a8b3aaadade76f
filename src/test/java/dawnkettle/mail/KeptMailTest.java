package dawnkettle.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class KeptMailTest {
    @Test
    void what_is_kept_is_read_back_the_same() {
        Mail mail = new Mail(
                "2026-12-04.summary.2",
                List.of("owner@millrace.example", "desk@millrace.example"),
                "Fri 4 Dec: 2 °C, \"quotes\" and 豆腐",
                new Mail.Body(
                        "line\nline\r\n\n",
                        "<p>\u0000 ünïcode</p>",
                        List.of(new Mail.Picture("day", Bytes.of(new byte[] {0, -1, 10}), "A picture"))),
                List.of(new Mail.Attachment("week.csv", "text/csv; charset=utf-8", Bytes.of(new byte[0]))));
        assertThat(KeptMail.read(KeptMail.write(mail))).isEqualTo(mail);
    }

    @Test
    void what_is_no_kept_mail_is_refused() {
        assertThatThrownBy(() -> KeptMail.read("All is well.".getBytes(java.nio.charset.StandardCharsets.UTF_8)))
                .hasMessage("this is no kept mail");
    }

    @Test
    void what_a_mail_answers_is_kept_and_what_is_no_message_id_is_not() {
        Mail mail = new Mail(
                "2026-12-04.reply.1", List.of("a@b.example"), "x", new Mail.Body("x", "x", List.of()), List.of());
        Mail answer = mail.answering(" <1.a-b@kitchen.example> ");
        assertThat(answer.envelope().answers()).contains("<1.a-b@kitchen.example>");
        assertThat(KeptMail.read(KeptMail.write(answer))).isEqualTo(answer);
        for (String none :
                List.of("", "<>", "<a b@c.example>", "<a@b.example>\r\nBcc: c@d.example", "<" + "x".repeat(300) + ">"))
            assertThat(mail.answering(none)).as(none).isEqualTo(mail);
    }

    @Test
    void each_address_has_its_own_mail_under_its_own_id_with_its_pictures() {
        Mail.Picture picture = new Mail.Picture("day", Bytes.of(new byte[] {1}), "The day.");
        Mail mail = new Mail(
                "2026-12-04.summary.1",
                List.of("a@b.example", "c@d.example"),
                "x",
                new Mail.Body("x", "<img src=\"cid:day@2026-12-04.summary.1\">", List.of(picture)),
                List.of());
        List<Mail> apart = mail.apart();
        assertThat(apart).extracting(Mail::id).containsExactly("2026-12-04.summary.1", "2026-12-04.summary.1.to2");
        assertThat(apart).extracting(Mail::to).containsExactly(List.of("a@b.example"), List.of("c@d.example"));
        for (Mail one : apart) assertThat(one.body().html()).contains("\"cid:" + picture.cid(one.id()) + "\"");
        assertThat(mail.addressedTo(List.of()).apart()).hasSize(1);
    }
}
