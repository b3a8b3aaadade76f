package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class Gs1DateTest {
    // By arithmetic on the rule of GenSpecs 7.12: 49 years back to 50 ahead.
    @ParameterizedTest
    @CsvSource({
        "26, 2026, 2026",
        "76, 2026, 2076",
        "77, 2026, 1977",
        "77, 2027, 2077",
        "78, 2027, 1978",
        "0, 2049, 2000",
        "0, 2050, 2100"
    })
    void two_digits_mean_a_year_from_49_back_to_50_ahead(int yy, int yearNow, int year) {
        assertThat(Gs1Date.year(yy, yearNow)).isEqualTo(year);
    }

    // 130200 and 160200: text of GenSpecs 3.4.5 in a library's documentation; the others: en.gs1.dk on identifier 10.
    @ParameterizedTest
    @CsvSource({
        "130200, 2013-02-28",
        "160200, 2016-02-29",
        "990800, 1999-08-31",
        "990701, 1999-07-01",
        "000615, 2000-06-15",
        "011126, 2001-11-26"
    })
    void a_day_nought_is_the_last_of_its_month(String text, LocalDate day) {
        assertThat(Gs1Date.read(text, 2026)).isEqualTo(day);
    }

    // gs1-syntax-dictionary, src/lint_yymmd0.c
    @ParameterizedTest
    @ValueSource(strings = {"200229", "240229", "210228", "000606", "990606", "200200"})
    void days_of_the_calendar_pass(String text) {
        assertThat(Gs1Date.isDate(text)).isTrue();
    }

    // the same file, and src/lint_yymmdd.c
    @ParameterizedTest
    @ValueSource(
            strings = {
                "210229", "220229", "240230", "200431", "200132", "200010", "201310", "209910", "11111", "1111111", "",
                "27013 "
            })
    void days_that_never_come_do_not(String text) {
        assertThat(Gs1Date.isDate(text)).isFalse();
    }

    @Test
    void a_day_is_written_with_its_real_day() {
        assertThat(Gs1Date.write(LocalDate.of(2028, 2, 29))).isEqualTo("280229");
        assertThatThrownBy(() -> Gs1Date.read("270231", 2026))
                .hasMessage("\"270231\" is not a date; write YYMMDD, as 270131");
    }
}
