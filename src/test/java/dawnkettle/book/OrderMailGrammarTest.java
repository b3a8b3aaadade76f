package dawnkettle.book;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.book.ReadOrderMail.Written;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Mails put together at random, whose meaning is known: nothing is booked but what they order. */
class OrderMailGrammarTest {
    private static ReadMail read(Written mail) {
        return ReadOrderMail.read(mail, OrderMailCorpusTest.reading(AnyOrderMail.CUSTOMER));
    }

    private static List<String> booked(ReadMail read) {
        return read.understood().stream().map(OrderMails::told).toList();
    }

    @Property(tries = 300)
    void nothing_is_booked_but_what_is_ordered(@ForAll long seed) {
        AnyOrderMail any = new AnyOrderMail(seed);
        Written mail = any.mail();
        assertThat(any.expected()).as(mail.body()).containsAll(booked(read(mail)));
    }

    @Test
    void nearly_all_that_is_ordered_is_booked() {
        int lines = 0;
        int booked = 0;
        for (int seed = 0; seed < 200; seed++) {
            AnyOrderMail any = new AnyOrderMail(seed);
            booked += booked(read(any.mail())).size();
            lines += any.expected().size();
        }
        assertThat((double) booked / lines).isGreaterThan(0.97);
    }

    @Property(tries = 300)
    void what_is_told_asked_or_refused_in_an_order_is_not_booked(@ForAll long seed) {
        AnyOrderMail any = new AnyOrderMail(seed);
        Written mail = any.mailWith(any.any(AnyOrderMail.NO_ORDER));
        ReadMail read = read(mail);
        assertThat(any.expected()).as(mail.body()).containsAll(booked(read));
        List<String> shown = new ArrayList<>(read.passedOver());
        read.questions().forEach(question -> shown.add(question.words()));
        assertThat(shown).as(mail.body()).anyMatch(words -> words.contains("sesame"));
    }

    @Property(tries = 400)
    void no_sentence_that_only_looks_like_an_order_is_booked_wherever_it_stands(@ForAll long seed) {
        AnyOrderMail any = new AnyOrderMail(seed);
        String danger = any.any(Dangers.NO_ORDER);
        boolean first = seed % 2 == 0;
        Written mail = first ? any.mail() : any.mailWith(danger);
        if (first) mail = any.written(mail.subject(), danger + "\n" + mail.body());
        ReadMail read = read(mail);
        assertThat(any.expected()).as(mail.body()).containsAll(booked(read));
        List<String> shown = new ArrayList<>(read.passedOver());
        read.questions().forEach(question -> shown.add(question.words()));
        assertThat(shown).as(mail.body()).anyMatch(words -> words.contains("sesame"));
    }

    @Property(tries = 200)
    void nothing_is_booked_of_a_mail_that_is_taken_back_in_other_words(@ForAll long seed) {
        AnyOrderMail any = new AnyOrderMail(seed);
        Written mail = any.mailWith(any.any(Dangers.TURNS));
        assertThat(booked(read(mail))).as(mail.body()).isEmpty();
    }

    @Test
    void a_remark_with_figures_leaves_the_order_beside_it_as_it_was() {
        int lines = 0;
        int booked = 0;
        for (int seed = 0; seed < 100; seed++) {
            AnyOrderMail any = new AnyOrderMail(seed);
            Written mail = any.mailWith(any.any(Dangers.REMARKS));
            List<String> read = booked(read(mail));
            assertThat(any.expected()).as(mail.body()).containsAll(read);
            booked += read.size();
            lines += any.expected().size();
        }
        assertThat((double) booked / lines).isGreaterThan(0.95);
    }

    @Property(tries = 200)
    void nothing_is_booked_of_a_mail_that_is_taken_back_at_its_end(@ForAll long seed) {
        AnyOrderMail any = new AnyOrderMail(seed);
        Written mail = any.mailWith(any.any(AnyOrderMail.TURNS));
        assertThat(booked(read(mail))).as(mail.body()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Friday\n%s", "6 firm 400 for Friday please.\n%s\nThanks", "%s\nFor Friday 6 firm 400."})
    void no_sentence_of_the_list_of_dangers_is_booked(String around) throws IOException {
        try (InputStream in = OrderMails.class.getResourceAsStream("/dawnkettle/order-mails/dangers.txt")) {
            List<String> dangers = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            assertThat(dangers)
                    .hasSizeGreaterThan(150)
                    .allSatisfy(danger -> assertThat(booked(read(
                                    new Written("order", around.formatted(danger), LocalDate.parse("2026-12-01")))))
                            .as(danger)
                            .noneMatch(wish -> wish.contains("SES-350")));
        }
    }
}
