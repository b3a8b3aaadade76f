package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dawnkettle.measure.Mass;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Vectors of github.com/gs1/gs1-syntax-engine (src/c-lib/ai.c, scandata.c; Apache-2.0) unless said otherwise. */
class ElementStringTest {
    private static final Element GTIN = Element.gtin("09501101530003");
    private static final Element BEST = Element.bestBefore(LocalDate.of(2027, 1, 31));
    private static final Element LOT = Element.lot("AB-123");

    @ParameterizedTest
    @CsvSource({
        "(01)12345678901231, ^0112345678901231",
        "(10)12345, ^1012345",
        "(01)12345678901231(10)12345, ^01123456789012311012345",
        "(3100)123456(10)12345, ^31001234561012345",
        "(10)12345(11)991225, ^1012345^11991225",
        "(3900)12345(11)991225, ^390012345^11991225",
        "(01)12345678901231(235)XYZ(10)BATCH, ^0112345678901231235XYZ^10BATCH",
        "(10)12345\\(11)991225, ^1012345(11)991225",
        "(01)95012345678903(3103)000123, ^01950123456789033103000123"
    })
    void brackets_become_separators(String bracketed, String joined) {
        ElementString read = ElementString.read(bracketed);
        assertThat(read.joined()).isEqualTo(joined);
        assertThat(read.bracketed()).isEqualTo(bracketed);
        assertThat(ElementString.readJoined(joined)).isEqualTo(read);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "(10)(11)98765",
                "(10)12345(11)",
                "(1A)12345",
                "12345",
                "()12345",
                "(15",
                "(01)123456789012312(10)12345",
                "(10)12345^",
                "(17)9(90)217",
                "(01)95012345678902(3103)000123",
                "(01)95012345678903(11)131313"
            })
    void bracketed_text_out_of_form_is_refused(String bracketed) {
        assertThatThrownBy(() -> ElementString.read(bracketed)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"^0112345678901231991234", "^0112345678901231^991234", "^0112345678901231^"})
    void a_separator_too_many_is_tolerated(String joined) {
        assertThat(ElementString.readJoined(joined).value("01")).contains("12345678901231");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "991234",
                "^",
                "^891234",
                "^0112345678901234",
                "^011234567890123",
                "^01123456789012345^991234",
                "^99~ABC"
            })
    void joined_text_out_of_form_is_refused(String joined) {
        assertThatThrownBy(() -> ElementString.readJoined(joined)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"]C1", "]d2", "]Q3", "]J1", "]e0"})
    void scans_are_read_and_written(String head) {
        String scan = head + "011231231231233310ABC123\u001D99TESTING";
        ElementString read = ElementString.readScanned(scan);
        assertThat(read.joined()).isEqualTo("^011231231231233310ABC123^99TESTING");
        assertThat(read.scanned(head)).isEqualTo(scan);
    }

    @ParameterizedTest
    @ValueSource(strings = {"]C1", "]C101123123123133^10ABC", "]C00112312312312333"})
    void scans_out_of_form_are_refused(String scan) {
        assertThatThrownBy(() -> ElementString.readScanned(scan)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "(02)12345678901231(37)123(00)123456789012345675",
                "(01)12345678901231(3925)12599(3100)654321",
                "(01)12345678901231(15)270131(10)AB-123",
                "(01)99501101530006(3102)001250",
                "(00)123456789012345675"
            })
    void strings_that_are_whole_pass(String bracketed) {
        assertThat(ElementString.read(bracketed).complaints()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "(02)12345678901231",
                "(02)12345678901231(37)123",
                "(01)12345678901231(37)123",
                "(01)12345678901231(02)12345678901231",
                "(21)ABC123",
                "(01)12345678901231(3925)12599",
                // accepted by three encoders that were tried, and refused here
                "(15)270131(10)AB-123",
                // variable measure without a measure, after a GS1 member's fact sheet
                "(01)99501101530006(10)AB-123",
                "(01)12345678901231(3102)001250(3103)012500",
                "(01)12345678901231(10)A(10)B"
            })
    void strings_that_lack_or_clash_are_refused(String bracketed) {
        ElementString read = ElementString.read(bracketed);
        assertThat(read.complaints()).isNotEmpty();
        assertThatThrownBy(() -> ElementString.of(read.elements())).isInstanceOf(IllegalArgumentException.class);
    }

    /** What an encoder that was tried (0.5.4 of the one we draw with) lets through, and we do not. */
    @ParameterizedTest
    @CsvSource({
        "01, 09501101530004, '(01) \"09501101530004\" has a wrong check digit; it ends in 3 if the rest is right'",
        "00, 095011015300000011, '(00) \"095011015300000011\" has a wrong check digit; it ends in 0 if the rest is right'",
        "15, 271301, '(15) \"271301\" is not a date; write YYMMDD, as 270131'",
        "15, 270230, '(15) \"270230\" is not a date; write YYMMDD, as 270131'",
        "10, AB 12, '(10) \"AB 12\" has a character outside the 82 of GS1; write letters, digits, - / . _'",
        "10, AB#12, '(10) \"AB#12\" has a character outside the 82 of GS1; write letters, digits, - / . _'",
        "10, ABCDEFGHIJKLMNOPQRSTU, '(10) \"ABCDEFGHIJKLMNOPQRSTU\" has 21 characters; write 1 to 20'",
        "3102, 12345, '(3102) \"12345\" has 5 characters; write exactly 6'",
        "89, 1234, '(89) is not an identifier that we know; write one as (01), (10), (15)'"
    })
    void a_wrong_value_is_refused_in_words(String code, String value, String message) {
        assertThatThrownBy(() -> new Element(code, value)).hasMessage(message);
    }

    @Test
    void the_82_characters_are_taken() {
        assertThat(Element.lot("AB-12/3_a").value()).isEqualTo("AB-12/3_a");
        assertThat(new Element("91", "!\"%&'()*+,-./09:;<=>?AZ_az").value()).hasSize(26);
    }

    @Test
    void typed_values_make_the_sample() {
        ElementString sample = ElementString.of(LOT, BEST, GTIN);
        // Predefined lengths first, in the order given; the lot, of free length, last.
        assertThat(sample.bracketed()).isEqualTo("(15)270131(01)09501101530003(10)AB-123");
        assertThat(ElementString.of(GTIN, BEST, LOT).bracketed()).isEqualTo("(01)09501101530003(15)270131(10)AB-123");
        // By arithmetic: 16 + 8 + 8; with (3102)001250 ten more; (01) + (10) x 20 + separator + (21) x 20 are 61.
        assertThat(sample.characters()).isEqualTo(32);
        assertThat(ElementString.of(GTIN, Element.netKilograms(Mass.kilograms(new BigDecimal("12.5")), 2), BEST, LOT)
                        .characters())
                .isEqualTo(42);
        assertThat(ElementString.of(GTIN, Element.lot("A".repeat(20)), Element.serial("B".repeat(20)))
                        .characters())
                .isEqualTo(61);
    }

    @Test
    void net_mass_is_cut_never_rounded_up() {
        assertThat(Element.netKilograms(Mass.kilograms(new BigDecimal("12.5")), 2))
                .isEqualTo(new Element("3102", "001250"));
        assertThat(Element.netKilograms(Mass.grams(195), 3)).isEqualTo(new Element("3103", "000195"));
        // 12.5 kg are 27.5577… lb (by arithmetic on 0.45359237 kg): 27.5 at one place, where half-up would say 27.6.
        assertThat(Element.netPounds(Mass.kilograms(new BigDecimal("12.5")), 1))
                .isEqualTo(new Element("3201", "000275"));
    }

    @Test
    void one_of_two_symbols_carries_its_part() {
        ElementString whole = ElementString.of(GTIN, BEST, LOT);
        assertThat(whole.only(List.of("01", "15")).orElseThrow().bracketed()).isEqualTo("(01)09501101530003(15)270131");
        assertThat(whole.only(List.of("21"))).isEmpty();
    }
}
