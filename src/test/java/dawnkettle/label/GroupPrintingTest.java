package dawnkettle.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dawnkettle.trouble.DeviceAway;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class GroupPrintingTest {
    private static final int LABELS = 12;
    private static final GroupPrinting.Pace PACE =
            new GroupPrinting.Pace(4, Duration.ofMillis(500), Duration.ofSeconds(10), Duration.ofSeconds(60));

    /** Writes down what it is told. */
    private static class Notes implements LabelJournal {
        final List<Integer> intended = new ArrayList<>();
        final List<Integer> confirmed = new ArrayList<>();
        final List<Integer> doubtful = new ArrayList<>();
        final List<String> pauses = new ArrayList<>();

        @Override
        public void intended(Confirmed group) {
            intended.addAll(numbers(group));
        }

        @Override
        public void confirmed(Confirmed group) {
            confirmed.addAll(numbers(group));
        }

        @Override
        public void doubtful(Confirmed group) {
            doubtful.addAll(numbers(group));
        }

        @Override
        public void paused(String why) {
            pauses.add(why);
        }

        private static List<Integer> numbers(Confirmed group) {
            return IntStream.rangeClosed(group.first(), group.last()).boxed().toList();
        }
    }

    static Stream<String> profiles() {
        return SampleProfiles.all().stream().map(PrinterProfile::name);
    }

    static Stream<Arguments> everyLabelOfEveryProfile() {
        return profiles().flatMap(name -> IntStream.rangeClosed(1, LABELS).mapToObj(k -> Arguments.of(name, k)));
    }

    private static LabelRun run() {
        return LabelRun.whole(
                "261204-FI03",
                "FIRM-12",
                List.of(
                        new LabelCopies(LabelCopies.Kind.CASE, FakePrinter.PICTURE, false, LABELS - 1),
                        new LabelCopies(LabelCopies.Kind.PART_CASE, FakePrinter.PICTURE, false, 1)));
    }

    private static void print(String profile, FakeLine line, LabelRun run, Notes notes) {
        new GroupPrinting(SampleProfiles.profile(profile), line, PACE).print(run, notes);
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void every_label_comes_out_once_and_is_confirmed(String profile) {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile(profile));
        Notes notes = new Notes();
        print(profile, new FakeLine(printer), run(), notes);
        assertThat(printer.printed()).hasSize(LABELS).containsOnly(FakePrinter.PICTURE);
        assertThat(notes.confirmed)
                .isEqualTo(IntStream.rangeClosed(1, LABELS).boxed().toList());
        assertThat(notes.intended).isEqualTo(notes.confirmed);
        assertThat(notes.doubtful).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("everyLabelOfEveryProfile")
    void labels_put_in_while_it_waits_let_it_go_on(String profile, int k) {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile(profile)).roll(k - 1);
        Notes notes = new Notes();
        print(profile, new FakeLine(printer).refillAfter(Duration.ofSeconds(30)), run(), notes);
        assertThat(printer.printed()).hasSize(LABELS);
        assertThat(notes.confirmed).hasSize(LABELS);
        assertThat(notes.pauses).contains("label printer on /dev/fake is out of labels; put in labels");
    }

    @ParameterizedTest
    @MethodSource("everyLabelOfEveryProfile")
    void out_of_labels_for_good_leaves_none_confirmed_that_did_not_come_out(String profile, int k) {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile(profile)).roll(k - 1);
        FakeLine line = new FakeLine(printer);
        Notes notes = new Notes();
        DeviceAway away = catchThrowableOfType(DeviceAway.class, () -> print(profile, line, run(), notes));
        assertThat(away.isAmbiguous()).isEqualTo(!notes.doubtful.isEmpty());
        assertThat(away).hasMessageContaining("is out of labels");
        assertThat(notes.confirmed.size()).isLessThanOrEqualTo(printer.printed().size());
        assertThat(printer.printed().size()).isLessThanOrEqualTo(notes.confirmed.size() + notes.doubtful.size());

        printer.newRoll();
        int next = Math.max(last(notes.confirmed), last(notes.doubtful)) + 1;
        if (next <= LABELS) print(profile, line, run().from(next), notes);
        // What was neither certain nor in doubt came out exactly once; what was in doubt at most once.
        assertThat(notes.confirmed).doesNotHaveDuplicates().noneMatch(notes.doubtful::contains);
        assertThat(notes.confirmed.size() + notes.doubtful.size()).isEqualTo(LABELS);
        assertThat(printer.printed().size()).isBetween(notes.confirmed.size(), LABELS);
    }

    private static int last(List<Integer> numbers) {
        return numbers.isEmpty() ? 0 : numbers.get(numbers.size() - 1);
    }

    @Test
    void a_printer_that_counts_leaves_only_the_label_under_its_head_in_doubt() {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile("text-with-hex-runs")).roll(6);
        Notes notes = new Notes();
        assertThatThrownBy(() -> print("text-with-hex-runs", new FakeLine(printer), run(), notes))
                .hasMessage(
                        "label printer on /dev/fake is out of labels; of 12 labels 1 to 6 are certain, look at label 7,"
                                + " 8 to 12 were not printed");
        assertThat(notes.confirmed).isEqualTo(List.of(1, 2, 3, 4, 5, 6));
        assertThat(notes.doubtful).isEqualTo(List.of(7));
    }

    @Test
    void one_that_does_not_count_leaves_its_group_in_doubt() {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile("line-words")).roll(6);
        Notes notes = new Notes();
        assertThatThrownBy(() -> print("line-words", new FakeLine(printer), run(), notes))
                .hasMessage("label printer on /dev/fake is out of labels; of 12 labels 1 to 4 are certain,"
                        + " look at labels 5 to 8, 9 to 12 were not printed");
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void unplugged_at_any_byte_nothing_is_confirmed_that_did_not_come_out(String profile) {
        Framing framing = new Framing(SampleProfiles.profile(profile));
        int most = framing.group(FakePrinter.PICTURE, 4).length * 4 + 200;
        for (int cut = 0; cut < most; cut += 7) {
            FakePrinter printer = new FakePrinter(SampleProfiles.profile(profile));
            FakeLine line = new FakeLine(printer).cutAfter(cut);
            Notes notes = new Notes();
            try {
                print(profile, line, run(), notes);
            } catch (DeviceAway e) {
                assertThat(e.isAmbiguous()).isEqualTo(!notes.doubtful.isEmpty());
                printer.pass(100_000);
                assertThat(printer.printed().size())
                        .isBetween(notes.confirmed.size(), notes.confirmed.size() + notes.doubtful.size());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void a_silent_printer_is_given_up_in_time_and_nothing_was_sent(String profile) {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile(profile));
        FakeLine line = new FakeLine(printer).answers(bytes -> new byte[0]);
        Notes notes = new Notes();
        DeviceAway away = catchThrowableOfType(DeviceAway.class, () -> print(profile, line, run(), notes));
        assertThat(away.isAmbiguous()).isFalse();
        assertThat(away)
                .hasMessage(
                        "label printer on /dev/fake has not answered (0 of 12 labels printed); see to it, we go on with"
                                + " label 1");
        assertThat(printer.printed()).isEmpty();
        assertThat(line.elapsedMillis()).isLessThanOrEqualTo(PACE.silence().toMillis() + 1_000);
    }

    @ParameterizedTest
    @MethodSource("profiles")
    void garbage_and_flipped_bits_never_confirm_what_did_not_come_out(String profile) {
        for (int seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            FakePrinter printer = new FakePrinter(SampleProfiles.profile(profile)).roll(random.nextInt(LABELS));
            FakeLine line = new FakeLine(printer).answers(bytes -> {
                byte[] flipped = bytes.clone();
                if (flipped.length > 0 && random.nextInt(4) == 0)
                    flipped[random.nextInt(flipped.length)] ^= (byte) (1 << random.nextInt(8));
                return flipped;
            });
            Notes notes = new Notes();
            try {
                print(profile, line, run(), notes);
            } catch (DeviceAway e) {
                assertThat(e.isAmbiguous()).isEqualTo(!notes.doubtful.isEmpty());
            }
            assertThat(notes.confirmed.size())
                    .as("seed %d of %s: %s", seed, profile, notes.pauses)
                    .isLessThanOrEqualTo(printer.printed().size());
            assertThat(printer.printed().size()).isLessThanOrEqualTo(notes.confirmed.size() + notes.doubtful.size());
        }
    }

    /** The printer still has three labels of the run before, and its answer to them, when the next run begins. */
    @Test
    void an_old_answer_is_never_taken_for_that_of_a_new_group() {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile("rows-behind-escape"))
                .roll(5)
                .millisALabel(3_000);
        FakeLine line = new FakeLine(printer);
        Notes notes = new Notes();
        assertThatThrownBy(() -> print("rows-behind-escape", line, run(), notes))
                .isInstanceOf(DeviceAway.class);
        assertThat(notes.doubtful).isEqualTo(List.of(5, 6, 7, 8));
        printer.newRoll();
        Notes rest = new Notes() {
            @Override
            public void confirmed(Confirmed group) {
                super.confirmed(group);
                // All that was ever sent before this group, and this group, must be out by now.
                assertThat(printer.printed().size()).isGreaterThanOrEqualTo(group.last());
            }
        };
        print("rows-behind-escape", line, run().from(9), rest);
        assertThat(rest.confirmed).isEqualTo(List.of(9, 10, 11, 12));
    }

    @Test
    void a_late_answer_is_waited_for() {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile("rows-behind-escape")).millisALabel(9_000);
        Notes notes = new Notes();
        print("rows-behind-escape", new FakeLine(printer), run(), notes);
        assertThat(notes.confirmed).hasSize(LABELS);
    }

    @Test
    void slips_are_not_counted_and_never_in_doubt() {
        FakePrinter printer = new FakePrinter(SampleProfiles.profile("line-words"));
        LabelRun run = LabelRun.whole(
                "261204-FI03",
                "FIRM-12",
                List.of(
                        new LabelCopies(LabelCopies.Kind.SLIP, FakePrinter.PICTURE, false, 1),
                        new LabelCopies(LabelCopies.Kind.CASE, FakePrinter.PICTURE, false, 3)));
        List<Confirmed> groups = new ArrayList<>();
        new GroupPrinting(SampleProfiles.profile("line-words"), new FakeLine(printer), PACE).print(run, groups::add);
        assertThat(printer.printed()).hasSize(4);
        assertThat(groups).containsExactly(new Confirmed("261204-FI03", "FIRM-12", 1, 3));
    }
}
