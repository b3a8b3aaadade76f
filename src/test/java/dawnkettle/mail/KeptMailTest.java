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
}
