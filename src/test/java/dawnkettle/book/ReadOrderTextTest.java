package dawnkettle.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.book.ReadOrderText.Asked;
import dawnkettle.book.ReadOrderText.Item;
import dawnkettle.trouble.BadFile;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReadOrderTextTest {
    private static final LocalDate FRIDAY = LocalDate.of(2026, 12, 4);
    private final Admission admission = new Admission(SmallShop.open(), LocalDate.of(2026, 12, 3));

    @Test
    void product_and_packs_stand_apart_or_together() {
        Asked apart = read("HARB FIRM-12 24 FRIED-8 6 2026-12-04");

        assertThat(apart)
                .isEqualTo(new Asked("HARB", FRIDAY, List.of(new Item("FIRM-12", 24), new Item("FRIED-8", 6))));
        assertThat(read("harb 24xFIRM-12 6xfried-8 2026-12-04")).isEqualTo(apart);
    }

    @Test
    void a_customer_may_be_called_by_an_alias() {
        assertThat(ReadOrderText.read(List.of("The Harbour", "FIRM-12", "2", "2026-12-04"), admission)
                        .customer())
                .isEqualTo("HARB");
    }

    @Test
    void every_word_that_cannot_be_read_is_named_at_once() {
        assertThatThrownBy(() -> read("HABR FRIM-12 none 7xMILK 4.12.2026"))
                .isInstanceOf(BadFile.class)
                .hasMessage(String.join(
                        "\n",
                        "order word:1: unknown customer \"HABR\"; did you mean \"HARB\"?",
                        "order word:2: unknown product \"FRIM-12\"; did you mean \"FIRM-12\"?",
                        "order word:3: packs \"none\" is not a whole number from 1 to 5000; write the packs as a number, as 24",
                        "order word:4: unknown product \"MILK\"; write a code of products.csv",
                        "order word:5: delivery date \"4.12.2026\" is not a day; write year-month-day, as 2026-12-04"));
    }

    @Test
    void a_day_that_cannot_be_had_says_the_next_one() {
        assertThatThrownBy(() -> read("HARB SOFT-6 4 2026-12-07"))
                .hasMessage("order word:2: \"SOFT-6\" made on 2026-12-05 has too few days left on 2026-12-07: "
                        + "2 of the 3 it needs; the next day it can be had is 2026-12-04");
        assertThatThrownBy(() -> read("HARB SOFT-6 4 2026-12-02"))
                .hasMessage("order word:2: delivery date \"2026-12-02\" is past; write a day from 2026-12-03 on");
        assertThatThrownBy(() -> read("HARB SOFT-6 4 2027-12-03"))
                .hasMessageContaining("is more than 180 days ahead; look at the year");
    }

    @Test
    void too_few_words_show_how_it_is_written() {
        assertThatThrownBy(() -> read("HARB 2026-12-04"))
                .hasMessageContaining("a customer, a product with packs and a day are needed");
    }

    private Asked read(String words) {
        return ReadOrderText.read(List.of(words.split(" ")), admission);
    }
}
