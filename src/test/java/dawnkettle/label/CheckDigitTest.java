package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CheckDigitTest {
    @ParameterizedTest
    @CsvSource({
        "629104150021, 3", // gs1hk.org, worked example
        "890400021003, 7", // gs1india.org, worked example
        "03600024145, 7", // encyclopaedia text
        "1234567890123, 1", // gs1-syntax-dictionary, src/lint_csum.c
        "123456789012, 8", // the same file
        "12345678901234567, 5", // the same file, an SSCC
        "0952123454321, 3", // sample of a wiki of an encoder; sum recomputed
        "37610425002123456, 9", // body from memory of GenSpecs 7.9; sum recomputed
        "0950110153000, 3", // by arithmetic
        "1950110153000, 0", // by arithmetic: a check digit that is nought
        "9950110153000, 6", // by arithmetic
        "09501101530000001, 0" // by arithmetic
    })
    void the_digit_is_the_published_one(String digits, int check) {
        assertThat(CheckDigit.of(digits)).isEqualTo(check);
        assertThat(CheckDigit.holds(digits + check)).isTrue();
        assertThat(CheckDigit.holds(digits + (check + 1) % 10)).isFalse();
    }

    // gs1-syntax-dictionary, src/lint_csum.c
    @ParameterizedTest
    @ValueSource(strings = {"416000336108", "02345673", "12345678901231", "1234567890128", "123456789012345675"})
    void published_numbers_hold(String number) {
        assertThat(CheckDigit.holds(number)).isTrue();
    }

    // gs1-syntax-dictionary, src/lint_csum.c
    @ParameterizedTest
    @ValueSource(strings = {"12345673", "12345678901232", "1234567890129", "123456789012345670"})
    void published_wrong_numbers_do_not(String number) {
        assertThat(CheckDigit.holds(number)).isFalse();
    }

    // gs1-syntax-dictionary, src/lint_csum.c: a character that is no digit is named with its position
    @Test
    void a_character_that_is_no_digit_is_named_with_its_position() {
        assertThatThrownBy(() -> CheckDigit.holds(" 23456789012345675"))
                .hasMessageContaining("has \" \" at position 1; write digits only");
        assertThatThrownBy(() -> CheckDigit.of("12345678901234567 "))
                .hasMessage("\"12345678901234567 \" has \" \" at position 18; write digits only");
    }
}
