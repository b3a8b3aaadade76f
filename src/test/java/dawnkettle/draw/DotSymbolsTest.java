package dawnkettle.draw;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.label.Dots;
import dawnkettle.label.ElementString;
import dawnkettle.label.Pitch;
import dawnkettle.label.Symbology;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DotSymbolsTest {
    /** Bar and space widths that another encoder (zint 2.11.1) gives for the sample; its digits sum to 266. */
    private static final String WIDTHS =
            "2112324111312221222212132311312312122221222131312122221212231132223122122221222123212213121141311113231311231"
                    + "221321232212232112211322131132331112";

    @Test
    void the_bars_of_the_sample_are_those_of_another_encoder() {
        Dots modules =
                DotSymbols.modules(Symbology.GS1_128, ElementString.read("(01)09501101530003(15)270131(10)AB-123"));
        StringBuilder widths = new StringBuilder();
        int run = 0;
        for (int x = 0; x < modules.width(); x++) {
            run++;
            if (x == modules.width() - 1 || modules.isBlack(x, 0) != modules.isBlack(x + 1, 0)) {
                widths.append(run);
                run = 0;
            }
        }
        assertThat(widths).hasToString(WIDTHS);
    }

    // Measured with this encoder and by arithmetic: 11 modules a character before the stop, and 13.
    @ParameterizedTest
    @CsvSource({
        "(01)09501101530003, 134",
        "(01)09501101530003(15)270131, 178",
        "(15)270131(10)AB-123, 178",
        "(10)AB-123, 134",
        "(10)261125, 90",
        "(01)09501101530003(15)270131(10)AB-123, 266",
        "(01)09501101530003(3102)001250(15)270131(10)AB-123, 321",
        "(00)095011015300000010, 156"
    })
    void modules_are_as_many_as_counted(String elements, int modules) {
        assertThat(DotSymbols.modules(Symbology.GS1_128, ElementString.read(elements))
                        .width())
                .isEqualTo(modules);
    }

    // By arithmetic: (266 + 20) modules of 4 dots are 1144 dots, 143 mm of eight a millimetre.
    @Test
    void the_sample_in_one_line_needs_143_millimetres() {
        assertThat((266 + 20) * 4).isEqualTo(new Pitch(8_000).dots(143_000));
    }

    // Three encoders that were tried give 20 by 20 for the sample.
    @Test
    void the_two_dimensional_symbol_is_square() {
        Dots square = DotSymbols.modules(
                Symbology.GS1_DATAMATRIX, ElementString.read("(01)09501101530003(15)270131(10)AB-123"));
        assertThat(square.width()).isEqualTo(20);
        assertThat(square.height()).isEqualTo(20);
        Dots shorter = DotSymbols.modules(Symbology.GS1_DATAMATRIX, ElementString.read("(01)09501101530003(15)270131"));
        assertThat(shorter.width()).isEqualTo(shorter.height());
    }
}
