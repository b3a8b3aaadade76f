package dawnkettle.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import dawnkettle.book.ReadOrderMail.Written;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is read from single mails; the day of the mail is Thursday 3 December 2026. */
class ReadOrderMailTest {
    private static final LocalDate THURSDAY = LocalDate.parse("2026-12-03");

    private static ReadMail read(String customer, String subject, String body) {
        return ReadOrderMail.read(
                new Written(subject, body.replace("\\n", "\n"), THURSDAY), OrderMailCorpusTest.reading(customer));
    }

    private static String told(ReadMail read) {
        return String.join(
                "; ", read.understood().stream().map(OrderMails::told).toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '#', quoteCharacter = '~', textBlock = """
            C002 # 6 firm for Friday. And 10 milk for Saturday.   # 12-04 FIRM-400 6; 12-05 MILK-500 10
            C002 # a case and a half of sesame for friday         # 12-04 SES-350 18
            C002 # Fri: 6 firm\\nSat: same                        # 12-04 FIRM-400 6; 12-05 FIRM-400 6
            C002 # half a dozen firm, both fri and sat            # 12-04 FIRM-400 6; 12-05 FIRM-400 6
            C002 # skip tomorrow                                  # 12-04 skip
            C002 # 6 frim and 12 seasme on friday                 # 12-04 FIRM-400 6; 12-04 SES-350 12
            C010 # dos cubos de firme para el viernes             # 12-04 FIRM-BKT 2
            C002 # <table><tr><td>firm</td><td>6</td></tr></table><p>for friday</p> # 12-04 FIRM-400 6
            C002 # 6 firm for Fri 4 Dec 2026                      # 12-04 FIRM-400 6
            C002 # double the sesame on saturday                  # 12-05 double SES-350
            C002 # 6 firm for tomorrow (Friday) before 7am        # 12-04 FIRM-400 6
            C002 # 12 frm, 15 pchs and 10 mlk for sat             # 12-05 FIRM-400 12; 12-05 FRY-150 15; 12-05 MILK-500 10
            C002 # Two (2) cases firm for Friday                  # 12-04 FIRM-400 24
            C002 # firm -> 12\\nsesame ..... 6\\nfor friday       # 12-04 FIRM-400 12; 12-04 SES-350 6
            C002 #  | Fri | Sat\\nfirm | 6 | 12\\nmilk | - | 10    # 12-04 FIRM-400 6; 12-05 FIRM-400 12; 12-05 MILK-500 10
            C002 # 6 firm for the fourth                          # 12-04 FIRM-400 6
            C002 # week of December 7: Mon 6 firm, Wed 8 firm     # 12-07 FIRM-400 6; 12-09 FIRM-400 8
            C002 # same as last Saturday for this Saturday        # 12-05 same 11-28
            C002 # Fri and Sat each 6 firm                        # 12-04 FIRM-400 6; 12-05 FIRM-400 6
            C002 # please cancel Saturday's delivery              # 12-05 skip
            C002 # no delivery Saturday, the roof is being mended # 12-05 skip
            C002 # change Saturday's firm from 12 to 18           # 12-05 set FIRM-400 18
            C002 # case of sesame, case and a half of firm, fri   # 12-04 SES-350 12; 12-04 FIRM-400 18
            C002 # 6 each of firm and sesame for friday           # 12-04 FIRM-400 6; 12-04 SES-350 6
            C002 # 6 firm @ 2.10 for friday                       # 12-04 FIRM-400 6
            C002 # firm, 2 cases, fri                             # 12-04 FIRM-400 24
            C002 # 6 firm, no wait, make that 12 firm, for friday # 12-04 FIRM-400 12
            C002 # 6 firm fri, 12 sat                             # 12-04 FIRM-400 6; 12-05 FIRM-400 12
            C002 # My son is 7 and eats only tofu! 6 firm for fri # 12-04 FIRM-400 6
            C002 # The choir sings on Friday, so we would like 12 firm, please # 12-04 FIRM-400 12
            C002 # Same as last Saturday for this Saturday, but no milk # 12-05 same 11-28; 12-05 drop MILK-500
            C002 # Many thanks for the quick work on Monday. For Fri 6 firm. # 12-04 FIRM-400 6
            C003 # mañana viernes dos cubos de medio              # 12-04 MED-BKT 2
            C003 # el lunes por la mañana 2 cubos medio           # 12-07 MED-BKT 2
            """)
    void reads_orders_as_people_write_them(String customer, String body, String expected) {
        assertThat(told(read(customer, "order", body))).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "6 firm or 8 for friday",
                "24 firm for friday. Make it 30.",
                "24 firm for friday. Scratch that.",
                "24 firm for friday, make it 30",
                "1,000 firm for friday",
                "6-8 firm for friday",
                "firm 200 for friday",
                "400 firm for friday",
                "about 12 firm for friday",
                "2 packs of 6 pouches for friday",
                "We have 6 firm left from friday",
                "we wont need 6 firm on friday",
                "did you send 6 firm for friday?",
                "6 silk for friday",
                "6 firn tofu burgers for friday",
                "6 firm on Mon-Wed",
                "6 firm for the first friday",
                "don't send 6 firm on friday",
                "6 firm for last friday",
                "6 firm for 13/13",
                "6 firm for Friday not Saturday",
                "6 firm every friday",
                "remove 2 firm from friday",
                "increase firm by 2 on friday",
                "6 firm for friday\\n8 firm for friday",
                "0 firm for friday",
                "please move friday's 6 firm to saturday",
                "6 milk half for friday",
                "2 dozen or so firm on friday",
                "same as always for friday",
                "6 firm next friday",
                "half firm for friday",
                "I thought 6 firm for friday was enough",
                "ignore my mail of monday\\n6 firm for friday",
                "unless it rains, 6 firm for friday",
                "6 firm for tomorrow, saturday",
                "6 firm on fridays",
                "6 firm for friday, pending approval",
                "6 firm for friday, if not 8 sesame",
                "6 firm for friday. On reflection 8 firm.",
                "6 firm for friday, no 8",
                "last week you sent 6 firm, 8 pouches for friday",
                "what we got:\\n6 firm\\nfor friday",
                "6 firm for friday?",
                "6 firm for 2.1.",
                "two of the firm left for friday",
                "6 firm for friday, only a draft",
                "6 firm, 8 pouches for friday arrived broken",
            })
    void asks_rather_than_guesses(String body) {
        ReadMail read = read("C002", "order", body);
        assertThat(told(read)).isEmpty();
        assertThat(read.questions()).isNotEmpty();
    }

    @Test
    void an_elliptical_count_is_asked_and_so_is_an_x_that_may_be_of_either() {
        assertThat(told(read("C018", "x", "2 buckets of medium and 3 of firm for monday")))
                .doesNotContain("FIRM");
        assertThat(told(read("C024", "x", "8 x firm for monday"))).isEmpty();
        assertThat(told(read("C024", "x", "8x firm for monday"))).isEqualTo("12-07 FIRM-400 8");
    }

    @Test
    void a_day_head_that_is_not_understood_does_not_leave_its_lines_to_the_day_before() {
        String read = told(read("C002", "order", "Friday\n6 firm\nSaturday late afternoon:\n12 sesame"));
        assertThat(read).doesNotContain("12-04 SES-350");
    }

    @Test
    void what_is_quoted_or_below_the_name_is_not_read() {
        ReadMail read = read(
                "C002",
                "Re: order",
                "6 firm for friday\nThanks,\nJune\nMillpond 6, tel 555 0172\n\nOn Wed, Dec 2, 2026 Millrace wrote:\n> 12 sesame for saturday");
        assertThat(told(read)).isEqualTo("12-04 FIRM-400 6");
        assertThat(read.questions()).isEmpty();
    }

    @Test
    void a_mail_that_only_forwards_is_asked_about() {
        ReadMail read =
                read("C002", "Fwd: order", "---------- Forwarded message ----------\nFrom: a\n6 firm for friday");
        assertThat(told(read)).isEmpty();
        assertThat(read.questions()).isNotEmpty();
    }

    @Property(tries = 300)
    void whatever_is_written_is_read_in_bounded_time_and_without_complaint(
            @ForAll String subject, @ForAll String body) {
        assertThatCode(() -> read("C002", subject, body)).doesNotThrowAnyException();
    }

    @Provide
    Arbitrary<String> orderlike() {
        Arbitrary<String> word = Arbitraries.of(
                "6", "12", "firm", "extra", "x", "400", "case", "of", "monday", "fri", "14", "12/11", "not", "no",
                "and", ",", ":", "-", "milk", "bucket", "two", "dozen", "half", "skip", "same as", "last", "week",
                "next", "make", "to", "only", "was", "dec", "the", "4th", "\n", ". ", "pouches", "1/2", "½", "kg", "(",
                ")", "?", "zebra");
        return Combinators.combine(word.list().ofMaxSize(40), Arbitraries.of(" ", "  "))
                .as((words, blank) -> String.join(blank, words));
    }

    @Property(tries = 1000)
    void every_line_with_a_quantity_and_a_product_is_booked_or_asked(@ForAll("orderlike") String body) {
        ReadMail read = read("C002", "order", body);
        String shown = String.join(
                "\n",
                Stream.of(
                                read.understood().stream().map(OrderWish::words),
                                read.questions().stream().map(ReadMail.Question::words),
                                read.passedOver().stream())
                        .flatMap(words -> words)
                        .toList());
        for (String line : body.lines().toList())
            for (String product : List.of("firm", "milk", "pouches"))
                if (line.contains(product)) assertThat(shown).as(body).contains(product);
        read.understood().forEach(wish -> assertThat(wish.day()).isAfter(THURSDAY));
    }

    @Test
    void two_hundred_thousand_odd_characters_are_read_within_seconds() {
        String line = "6 firm <b 12/11 &amp; \" monday, ".repeat(50);
        String body = (line + "\n").repeat(140) + "<p ".repeat(20_000) + "(".repeat(40_000);
        Instant start = Instant.now();
        ReadMail read = read("C002", "6 ".repeat(5_000), body);
        assertThat(Duration.between(start, Instant.now())).isLessThan(Duration.ofSeconds(10));
        assertThat(read.questions()).isNotEmpty();
    }
}
