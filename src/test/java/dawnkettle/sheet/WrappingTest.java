package dawnkettle.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WrappingTest {
    /** Every letter is one millimetre wide. */
    private static final Wrapping WRAPPING = Wrapping.of((text, lettering) -> text.codePointCount(0, text.length()));

    private static final Lettering ANY = Lettering.plain(10);

    @Test
    void words_stay_whole_where_they_fit() {
        assertThat(WRAPPING.lines("fill the tub at 16:10 sharp", ANY, 15))
                .containsExactly("fill the tub at", "16:10 sharp");
    }

    @Test
    void a_time_is_never_broken_at_its_colon() {
        assertThat(WRAPPING.lines("latest 10:10", ANY, 10)).containsExactly("latest", "10:10");
    }

    @Test
    void a_word_longer_than_the_line_is_broken_and_nothing_is_lost() {
        assertThat(WRAPPING.lines("Sauerstoffflasche", ANY, 7)).containsExactly("Sauerst", "offflas", "che");
    }

    @Test
    void scripts_without_spaces_break_between_characters() {
        assertThat(WRAPPING.lines("木綿豆腐三百グラム", ANY, 4)).containsExactly("木綿豆腐", "三百グラ", "ム");
    }

    @Test
    void a_new_line_is_a_new_line() {
        assertThat(WRAPPING.lines("Fill at\nThu 3 Dec", ANY, 20)).containsExactly("Fill at", "Thu 3 Dec");
    }

    @Test
    void a_count_stays_with_what_is_counted() {
        assertThat(WRAPPING.lines("17 × bucket, 8 × kitchen tray", ANY, 17))
                .containsExactly("17 × bucket,", "8 × kitchen tray");
        assertThat(WRAPPING.lines("of 350 g 12 × tray", ANY, 15)).containsExactly("of 350 g", "12 × tray");
    }
}
