package dawnkettle.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ISO 8601 week dates about the turn of the year: rows of the table that encyclopaedias copy from the standard, and 53-week years. */
class IsoWeekTest {
    @ParameterizedTest
    @CsvSource({
        "2005-01-01, 2004-W53",
        "2005-01-02, 2004-W53",
        "2005-12-31, 2005-W52",
        "2006-01-01, 2005-W52",
        "2006-01-02, 2006-W01",
        "2006-12-31, 2006-W52",
        "2007-01-01, 2007-W01",
        "2007-12-31, 2008-W01",
        "2008-12-28, 2008-W52",
        "2008-12-29, 2009-W01",
        "2009-12-31, 2009-W53",
        "2010-01-03, 2009-W53",
        "2010-01-04, 2010-W01",
        "2026-11-25, 2026-W48",
        "2026-12-31, 2026-W53",
        "2027-01-01, 2026-W53",
        "2027-01-03, 2026-W53",
        "2027-01-04, 2027-W01"
    })
    void the_week_of_a_day(LocalDate day, String week) {
        assertThat(CostReport.isoWeek(day)).isEqualTo(week);
    }
}
