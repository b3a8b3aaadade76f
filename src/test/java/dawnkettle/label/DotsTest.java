package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class DotsTest {
    private static final Dots BOOT = Dots.typed("""
            #.........
            #.........
            ##########
            """);

    @Test
    void a_row_is_packed_from_the_left_and_filled_up_with_white() {
        assertThat(BOOT.row(0)).containsExactly(0x80, 0);
        assertThat(BOOT.row(2)).containsExactly(0xFF, 0xC0);
        assertThat(BOOT.rowBytes()).isEqualTo(2);
    }

    @Test
    void a_row_given_out_does_not_change_the_picture() {
        BOOT.row(0)[0] = 0x55;
        assertThat(BOOT.row(0)).containsExactly(0x80, 0);
    }

    @Test
    void a_quarter_turn_clockwise_brings_the_left_edge_up() {
        assertThat(BOOT.turned()).isEqualTo(Dots.typed("###\n" + "#..\n".repeat(9)));
        assertThat(BOOT.turned().turnedBack()).isEqualTo(BOOT);
    }

    @Test
    void dots_off_the_picture_are_refused() {
        assertThatThrownBy(() -> BOOT.isBlack(10, 0)).hasMessage("dot 10,0 is off the picture");
        assertThatThrownBy(() -> new Dots.Ink(2, 2).fill(1, 1, 2, 1)).hasMessage("dot 2,1 is off the picture");
    }

    @Test
    void blank_rows_are_known() {
        Dots picture = Dots.typed("...\n.#.\n...");
        assertThat(picture.isBlank(0)).isTrue();
        assertThat(picture.isBlank(1)).isFalse();
        assertThat(picture.isBlank(2)).isTrue();
    }
}
