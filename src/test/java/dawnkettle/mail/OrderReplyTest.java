package dawnkettle.mail;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.OrderWish;
import dawnkettle.book.ReadMail;
import dawnkettle.book.ReadMail.Question;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class OrderReplyTest {
    private static final LocalDate FRIDAY = LocalDate.parse("2026-12-04");
    private static final ZonedDateTime CLOSE = ZonedDateTime.parse("2026-12-03T15:00-05:00[America/New_York]");

    private static Mail reply(String subject, ReadMail read) {
        var answered = new OrderReply.Answered("2026-12-03.order.1", "orders@ambercote-grocery.example", subject);
        return OrderReply.of(answered, read, Millrace.shop(), day -> Optional.of(CLOSE));
    }

    @Test
    void says_line_by_line_what_is_booked_what_is_asked_and_until_when_it_can_be_changed() {
        String code = Millrace.shop().products().get(0).code();
        String name = Millrace.shop().products().get(0).name();
        Mail mail = reply(
                "order",
                new ReadMail(
                        List.of(
                                new OrderWish.More(FRIDAY, code, 4, "4 buckets"),
                                new OrderWish.SkipDay(FRIDAY.plusDays(1), "skip us sat")),
                        List.of(new Question("6 smoked tofu", "Which product is meant?")),
                        List.of("Hope you are well")));
        assertThat(mail.subject()).isEqualTo("Re: order");
        assertThat(mail.body().text())
                .contains("2 lines are booked. 1 needs your answer.")
                .contains("4 × " + name)
                .contains("\"4 buckets\"")
                .contains("nothing at all that day")
                .contains("\"6 smoked tofu\": Which product is meant?")
                .contains("\"Hope you are well\"")
                .contains("15:00");
        assertThat(mail.body().html()).contains("6 smoked tofu").contains("Hope you are well");
    }

    @Test
    void headers_tags_and_formulas_in_the_customers_words_stay_words() {
        String evil =
                "x\r\nBcc: all@other.example\r\n\r\n<script>alert(1)</script>=HYPERLINK(\"http://other.example\")\u202E";
        Mail mail = reply(evil, new ReadMail(List.of(), List.of(new Question(evil, "Unclear.")), List.of(evil)));
        assertThat(mail.subject()).doesNotContain("\r", "\n", "\u202E").startsWith("Re: ");
        assertThat(mail.body().html()).doesNotContain("<script>", "\u202E").contains("&lt;script&gt;");
        assertThat(mail.body().text().lines()).noneMatch(line -> line.matches("=[^=].*|Bcc.*"));
        assertThat(mail.attachments()).isEmpty();
        assertThat(mail.to()).containsExactly("orders@ambercote-grocery.example");
    }

    @Test
    void a_subject_of_many_letters_is_cut_and_answers_are_not_piled_up() {
        assertThat(reply("Re: RE: re: " + "tofu ".repeat(200), new ReadMail(List.of(), List.of(), List.of()))
                        .subject())
                .hasSizeLessThan(140)
                .startsWith("Re: tofu");
    }
}
