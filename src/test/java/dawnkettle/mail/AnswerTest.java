package dawnkettle.mail;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.mail.Answer.Asked;
import dawnkettle.mail.Answer.Part;
import java.util.List;
import org.junit.jupiter.api.Test;

class AnswerTest {
    private static Mail answer(String subject, List<Part> parts) {
        return new Answer(Millrace.shop().house(), "2026-12-03.reply.1")
                .of(
                        new Asked("orders@ambercote-grocery.example", subject),
                        "Please look: 1 line is taken, 1 not.",
                        false,
                        parts);
    }

    @Test
    void the_subject_begins_with_the_writers_own_words_and_says_how_it_stands() {
        assertThat(answer("RE: Re: order for sat", List.of()).subject())
                .isEqualTo("Re: order for sat – Please look: 1 line is taken, 1 not.");
        assertThat(answer(" ", List.of()).subject()).startsWith("Re: your order – ");
        assertThat(answer("tofu ".repeat(200), List.of()).subject())
                .hasSizeLessThanOrEqualTo(78)
                .startsWith("Re: tofu tofu");
    }

    @Test
    void lines_stand_under_their_headings_in_both_forms() {
        Mail mail = answer(
                "order", List.of(new Part("Friday 4 December", List.of("4 × Firm")), new Part("Empty", List.of())));
        assertThat(mail.body().text()).contains("Friday 4 December", "4 × Firm").doesNotContain("Empty");
        assertThat(mail.body().html()).contains("Friday 4 December", "4 × Firm").doesNotContain("Empty");
    }

    @Test
    void headers_tags_and_formulas_in_the_customers_words_stay_words() {
        String evil =
                "x\r\nBcc: all@other.example\r\n\r\n<script>alert(1)</script>=HYPERLINK(\"http://other.example\")\u202E";
        Mail mail = answer(evil, List.of(new Part("Not taken", List.of(evil))));
        assertThat(mail.subject()).doesNotContain("\r", "\n", "\u202E").startsWith("Re: ");
        assertThat(mail.body().html()).doesNotContain("<script>", "\u202E").contains("&lt;script&gt;");
        assertThat(mail.body().text().lines()).noneMatch(line -> line.matches("=[^=].*|Bcc.*"));
        assertThat(mail.to()).containsExactly("orders@ambercote-grocery.example");
    }
}
