package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class LabelRunTest {
    private static final Dots PICTURE = Dots.typed("#.");
    private static final LabelRun RUN = LabelRun.whole(
            "261204-FI03",
            "FIRM-12",
            List.of(
                    new LabelCopies(LabelCopies.Kind.SLIP, PICTURE, false, 1),
                    new LabelCopies(LabelCopies.Kind.CASE, PICTURE, false, 5),
                    new LabelCopies(LabelCopies.Kind.PART_CASE, PICTURE, false, 1)));

    @Test
    void slips_are_not_counted() {
        assertThat(RUN.last()).isEqualTo(6);
    }

    @Test
    void a_run_is_gone_on_with_at_any_label() {
        LabelRun rest = RUN.from(4);
        assertThat(rest.first()).isEqualTo(4);
        assertThat(rest.last()).isEqualTo(6);
        assertThat(rest.labels()).extracting(LabelCopies::copies).containsExactly(2, 1);
        assertThat(RUN.from(6).labels()).extracting(LabelCopies::kind).containsExactly(LabelCopies.Kind.PART_CASE);
        assertThat(RUN.from(4).from(5).labels()).extracting(LabelCopies::copies).containsExactly(1, 1);
        assertThat(RUN.from(1)).isEqualTo(RUN);
    }

    @Test
    void a_few_of_it_can_be_had_for_a_reprint() {
        LabelRun few = RUN.only(4, 6);
        assertThat(few.labels()).extracting(LabelCopies::copies).containsExactly(2, 1);
        assertThat(RUN.only(2, 3).labels()).extracting(LabelCopies::copies).containsExactly(2);
        assertThat(RUN.only(2, 3).last()).isEqualTo(3);
    }
}
