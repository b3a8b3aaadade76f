package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

class MarketWordingTest {
    // California Food and Agricultural Code 82001 (copy read); Regulation (EU) 1169/2011 annex X 1(a) (quotation read)
    @Test
    void words_before_a_date_are_those_of_the_market() {
        assertThat(MarketWording.of("us-california").words().quality()).isEqualTo("BEST if Used by");
        assertThat(MarketWording.of("us-california").words().safety()).isEqualTo("USE by");
        assertThat(MarketWording.of("eu").words().quality()).isEqualTo("Best before");
        assertThat(MarketWording.of("eu").words().qualityMonth()).isEqualTo("Best before end");
    }

    // Annex X 1(c): day, month, year in that order; Codex CXS 1-1985: month in letters
    @Test
    void the_month_is_in_letters() {
        LocalDate day = LocalDate.of(2027, 1, 31);
        assertThat(MarketWording.of("eu").date(day)).isEqualTo("31 JAN 2027");
        assertThat(MarketWording.of("us").date(day)).isEqualTo("JAN 31 2027");
        assertThat(MarketWording.of("eu").date(LocalDate.of(2026, 9, 1))).isEqualTo("01 SEP 2026");
    }

    // 21 CFR 101.2(c) as in its twin 501.2: 1/16 inch are 1.5875 mm, 13 dots of eight a millimetre (by arithmetic);
    // Regulation (EU) 1169/2011 article 13: 1.2 mm are 10 dots
    @Test
    void letters_are_as_high_as_the_rule_wants_rounded_up_to_whole_dots() {
        Pitch eight = new Pitch(8_000);
        assertThat(eight.dotsReaching(MarketWording.of("us").type().leastXHeight()))
                .isEqualTo(13);
        assertThat(eight.dotsReaching(MarketWording.of("eu").type().leastXHeight()))
                .isEqualTo(10);
    }

    @Test
    void every_preset_names_its_source_and_sends_the_owner_to_the_authority() {
        for (String market : MarketWording.markets())
            assertThat(MarketWording.of(market).caution())
                    .contains(MarketWording.of(market).source())
                    .endsWith("confirm it with your local authority before you sell under it");
        assertThatThrownBy(() -> MarketWording.of("moon")).hasMessage("no market moon");
    }
}
