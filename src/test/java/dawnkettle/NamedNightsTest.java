package dawnkettle;

import static org.assertj.core.api.Assertions.assertThat;

import dawnkettle.store.Ledger;
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

    @Test
    void a_morning_without_a_plan_has_a_mail_that_says_so() throws Exception {
        for (Mishap.Kind wrong : List.of(Mishap.Kind.CLOCK_YEAR_AHEAD, Mishap.Kind.CLOCK_IN_1970)) {
            List<Mishap> mishaps = List.of(new Mishap(wrong, 336, 10_000));
            try (FaultyNight night = new FaultyNight(1, mishaps, Plant.NONE)) {
                assertThat(night.play()).as(wrong.name()).isEmpty();
            }
        }
    }

    /** Five hours ahead it is past two in the evening; what is amended until two is in the plan all the same. */
    @Test
    void a_dawn_check_by_a_clock_that_was_ahead_comes_once_more_at_its_hour() throws Exception {
        int again = 0;
        for (long seed = 1; seed <= 6; seed++) {
            List<Mishap> ahead = List.of(new Mishap(Mishap.Kind.CLOCK_AHEAD, 1_115, 34));
            try (FaultyNight night = new FaultyNight(seed, ahead, Plant.NONE)) {
                assertThat(night.play()).as("seed " + seed).isEmpty();
                again += night.count("SELECT count(*) FROM step WHERE step = 'second dawn check' AND state = 'done'");
            }
        }
        assertThat(again).as("dawn checks that came again").isPositive();
    }

    /** An alert that the server did not take a year ahead waits minutes, and not until then. */
    @Test
    void a_mail_that_failed_by_a_clock_a_year_ahead_goes_out_when_the_clock_is_right() throws Exception {
        for (Mishap.Kind wrong : List.of(Mishap.Kind.POST_550, Mishap.Kind.POST_LOSES_ITS_250)) {
            List<Mishap> mishaps =
                    List.of(new Mishap(Mishap.Kind.CLOCK_YEAR_AHEAD, 842, 200), new Mishap(wrong, 1, 10_000));
            try (FaultyNight night = new FaultyNight(4, mishaps, Plant.NONE)) {
                assertThat(night.play()).as(wrong.name()).isEmpty();
                assertThat(night.count("SELECT count(*) FROM outbox WHERE queued_at > changed_at + 86400000"))
                        .as("mails dated a year ahead")
                        .isPositive();
            }
        }
    }

    /** Seed 103843: it starts some fifty times in vain, and at last it does. */
    @Test
    void a_disk_that_fails_at_eighty_writes_is_written_to_when_it_works_again() throws Exception {
        List<Mishap> mishaps = List.of(
                new Mishap(Mishap.Kind.DISK_FAILS_AT_A_NOTE, 52, 40),
                new Mishap(Mishap.Kind.POWER_CUT, 1_161, 1),
                new Mishap(Mishap.Kind.DISK_FULL, 231, 3),
                new Mishap(Mishap.Kind.DISK_FULL, 206, 40));
        try (FaultyNight night = new FaultyNight(103_843, mishaps, Plant.NONE)) {
            assertThat(night.play()).isEmpty();
        }
    }

    /** Seed 500180: a revision without the cancelled line was taken for one that had lost it. */
    @Test
    void what_is_cancelled_after_the_close_does_not_stop_the_dawn_check() throws Exception {
        int cancelled = 0;
        for (long seed = 1; seed <= 60 && cancelled < 2; seed++)
            try (FaultyNight night = new FaultyNight(seed, List.of(), Plant.NONE)) {
                assertThat(night.play()).as("seed " + seed).isEmpty();
                if (night.count("SELECT count(*) FROM amendment WHERE packs = 0 AND late = 1") == 0) continue;
                cancelled++;
                assertThat(night.count("SELECT count(*) FROM step WHERE step = 'dawn check' AND state = 'done'"))
                        .as("seed " + seed)
                        .isEqualTo(1);
            }
        assertThat(cancelled).as("nights in which a line was cancelled late").isPositive();
    }

    /** At each write of the recovery; the rest of the run comes out all the same. */
    @Test
    void a_second_power_cut_while_the_first_is_noted_leaves_no_label_unprinted() throws Exception {
        List<Mishap> cut = List.of(new Mishap(Mishap.Kind.POWER_CUT_BETWEEN_LABELS, 2, 1));
        for (int write = 1; write <= 8; write++) {
            CutAgain again = new CutAgain(write);
            try (FaultyNight night = new FaultyNight(1, cut, again)) {
                assertThat(night.play()).as("write " + write).isEmpty();
                assertThat(again.openings).as("starts, cut at write " + write).isGreaterThan(2);
            }
        }
    }

    /** The power goes once more at one write after the second start. */
    private static final class CutAgain extends Plant {
        private final int write;
        private int openings;
        private int writes;

        CutAgain(int write) {
            this.write = write;
        }

        @Override
        void opened(Ledger ledger) {
            openings++;
        }

        @Override
        String instead(String sql) {
            boolean isWrite =
                    sql.strip().startsWith("INSERT") || sql.strip().startsWith("UPDATE") || sql.equals("COMMIT");
            if (openings == 2 && isWrite && ++writes == write) throw new PowerCut("again, at " + sql);
            return sql;
        }
    }
}
