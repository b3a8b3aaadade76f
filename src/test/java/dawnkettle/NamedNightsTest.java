package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Nights that went wrong once, each kept under its name. */
class NamedNightsTest {
    private static final int MOST_SEEDS = 30;

    @Test
    void a_revision_whose_sheets_were_cut_off_hangs_all_the_same() throws Exception {
        int revised = 0;
        for (long seed = 1; seed <= MOST_SEEDS && revised < 2; seed++) {
            Set<String> whole;
            try (FaultyNight night = new FaultyNight(seed, List.of(), Plant.NONE)) {
                assertThat(night.play()).as("seed " + seed).isEmpty();
                whole = night.sheets();
            }
            long before =
                    whole.stream().filter(key -> !key.contains(" revision 2 ")).count();
            if (whole.size() - before < 2) continue;
            revised++;
            List<Mishap> cut = List.of(new Mishap(Mishap.Kind.POWER_CUT_AFTER_A_SHEET, (int) before + 1, 1));
            try (FaultyNight night = new FaultyNight(seed, cut, Plant.NONE)) {
                assertThat(night.play()).as("seed " + seed).isEmpty();
                assertThat(night.sheets()).as("seed " + seed).isEqualTo(whole);
            }
        }
        assertThat(revised).as("nights with a revision").isEqualTo(2);
    }

    @Test
    void a_sheet_in_doubt_that_then_finds_the_printer_off_is_marked_all_the_same() throws Exception {
        List<Mishap> mishaps =
                List.of(new Mishap(Mishap.Kind.PAPER_DIES_AFTER_TAKING, 1, 1), new Mishap(Mishap.Kind.PAPER_OFF, 2, 1));
        try (FaultyNight night = new FaultyNight(1, mishaps, Plant.NONE)) {
            assertThat(night.play()).isEmpty();
        }
    }

    @Test
    void whichever_note_finds_the_disk_full_nothing_goes_out_twice_unmarked() throws Exception {
        for (int note = 24; note < 260; note += 18) {
            List<Mishap> full = List.of(new Mishap(Mishap.Kind.DISK_FULL_AT_A_NOTE, note, 1));
            try (FaultyNight night = new FaultyNight(3, full, Plant.NONE)) {
                assertThat(night.play()).as("note " + note).isEmpty();
            }
        }
    }
}
