package dawnkettle.mail;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class FarmerNoteTest {
    @Test
    void it_says_how_much_when_how_to_keep_it_and_until_when() {
        Mail note = FarmerNote.of(MillraceFriday.well(), Millrace.shop()).orElseThrow();
        assertThat(note.id()).isEqualTo("2026-12-04.okara.1");
        assertThat(note.subject()).isEqualTo("Fri 4 Dec: 142.7 kg of okara, ready 05:24");
        assertThat(note.body().text()).isEqualTo("""
                About 142.7 kg of okara, ready to be fetched at 05:24.

                How to keep it
                ==============
                Keep it cool and covered, at or below 5 °C (41 °F).
                Not kept cool, feed it by 15:24; when it smells sour, throw it away.
                It is soy, and wet: about four fifths water.

                ------------------------------------------------------------------------
                A reckoned figure: 1.37 kg a kg at 80 % moisture, from 30 % of the
                beans' solids (Wang and Cavins 1989).
                """);
    }
}
