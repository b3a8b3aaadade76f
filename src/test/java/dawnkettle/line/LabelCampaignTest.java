package dawnkettle.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import dawnkettle.label.Confirmed;
import dawnkettle.label.Dots;
import dawnkettle.label.FakePrinter;
import dawnkettle.label.LabelCopies;
import dawnkettle.label.LabelJournal;
import dawnkettle.label.LabelRun;
import dawnkettle.label.PrinterProfile;
import dawnkettle.label.SampleProfiles;
import dawnkettle.trouble.DeviceAway;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Everything that can go wrong on a line, at two speeds, and a person who puts it right after a while: labels that came out
 * are those of the journal, and none comes twice. {@code -Dcampaign=long} tries every fault with every profile, a profile's name those with that one (some
 * minutes); the usual form is a sample of it.
 */
class LabelCampaignTest {
    private static final String CAMPAIGN = System.getProperty("campaign", "");
    private static final boolean IS_LONG = "long".equals(CAMPAIGN);
    private static final int LABELS = 8;
    private static final int GROUP = 3;
    private static final Duration PATIENCE = Duration.ofMillis(1_200);

    @TempDir
    Path folder;

    /** Something that goes wrong, at a label or a byte. */
    private record Fault(Kind kind, int at, PrinterProfile profile, int baud) {
        @Override
        public String toString() {
            return profile.name() + " at " + baud + " baud: " + kind + " " + at;
        }
    }

    private enum Kind {
        NOTHING,
        OUT_OF_LABELS_FOR_A_WHILE,
        OUT_OF_LABELS_FOR_LONG,
        UNPLUGGED,
        SWITCHED_OFF,
        GARBAGE,
        FLIPPED_BITS,
        LATE
    }

    /** What the night writes down. */
    private static final class Journal implements LabelJournal {
        final BitSet confirmed = new BitSet();
        final BitSet doubtful = new BitSet();

        @Override
        public void intended(Confirmed group) {
            for (int number = group.first(); number <= group.last(); number++)
                assertThat(confirmed.get(number) || doubtful.get(number)).isFalse();
        }

        @Override
        public void confirmed(Confirmed group) {
            confirmed.set(group.first(), group.last() + 1);
        }

        @Override
        public void doubtful(Confirmed group) {
            doubtful.set(group.first(), group.last() + 1);
        }

        int next() {
            BitSet known = (BitSet) confirmed.clone();
            known.or(doubtful);
            return known.nextClearBit(1);
        }
    }

    static Stream<Fault> faults() {
        return !CAMPAIGN.isEmpty()
                ? SampleProfiles.all().stream()
                        .filter(profile -> IS_LONG || profile.name().equals(CAMPAIGN))
                        .flatMap(profile -> Stream.of(9_600, 115_200).flatMap(baud -> faults(profile, baud)))
                : sample();
    }

    /** Each kind once where the picture is kept till the next, labels out at each label where it is kept by name. */
    private static Stream<Fault> sample() {
        PrinterProfile words = SampleProfiles.profile("line-words");
        PrinterProfile digits = SampleProfiles.profile("text-with-hex-runs");
        PrinterProfile deflated = SampleProfiles.profile("text-with-deflated-dots");
        Stream<Fault> kinds = Stream.of(
                new Fault(Kind.OUT_OF_LABELS_FOR_LONG, 5, words, 115_200),
                new Fault(Kind.UNPLUGGED, 253, words, 115_200),
                new Fault(Kind.SWITCHED_OFF, 401, words, 115_200),
                new Fault(Kind.GARBAGE, 1, words, 115_200),
                new Fault(Kind.FLIPPED_BITS, 1, words, 115_200),
                new Fault(Kind.LATE, 1, words, 115_200),
                new Fault(Kind.UNPLUGGED, 101, deflated, 115_200),
                new Fault(Kind.SWITCHED_OFF, 253, deflated, 115_200));
        return Stream.concat(
                kinds,
                IntStream.rangeClosed(1, LABELS)
                        .mapToObj(k -> new Fault(Kind.OUT_OF_LABELS_FOR_A_WHILE, k, digits, 115_200)));
    }

    private static Stream<Fault> faults(PrinterProfile profile, int baud) {
        List<Fault> faults = new ArrayList<>();
        faults.add(new Fault(Kind.NOTHING, 0, profile, baud));
        for (int k = 1; k <= LABELS; k++) {
            faults.add(new Fault(Kind.OUT_OF_LABELS_FOR_A_WHILE, k, profile, baud));
            faults.add(new Fault(Kind.OUT_OF_LABELS_FOR_LONG, k, profile, baud));
        }
        for (int at : new int[] {1, 101, 253, 401}) {
            faults.add(new Fault(Kind.UNPLUGGED, at, profile, baud));
            faults.add(new Fault(Kind.SWITCHED_OFF, at, profile, baud));
        }
        for (int seed = 1; seed <= 4; seed++) {
            faults.add(new Fault(Kind.GARBAGE, seed, profile, baud));
            faults.add(new Fault(Kind.FLIPPED_BITS, seed, profile, baud));
        }
        faults.add(new Fault(Kind.LATE, 1, profile, baud));
        return faults.stream();
    }

    @BeforeEach
    void needs_socat() {
        assumeThat(PtyPrinter.isPossible()).as("socat is not there").isTrue();
    }

    @ParameterizedTest
    @MethodSource("faults")
    void labels_that_came_out_are_those_of_the_journal_and_none_comes_twice(Fault fault) throws Exception {
        FakePrinter printer = new FakePrinter(fault.profile()).millisALabel(15);
        Journal journal = new Journal();
        long start = System.nanoTime();
        int tries = 0;
        for (boolean isWell = false; journal.next() <= LABELS; isWell = true) {
            assertThat(++tries).as("tries until all is known").isLessThanOrEqualTo(4);
            night(fault, printer, journal, isWell);
            printer.newRoll();
            if (needsSwitch(fault)) printer.restart();
        }
        // What a printer still holds comes out in the end.
        printer.pass(60_000);
        int certain = journal.confirmed.cardinality();
        int doubtful = journal.doubtful.cardinality();
        assertThat(certain + doubtful).isEqualTo(LABELS);
        assertThat(printer.printed()).allMatch(FakePrinter.PICTURE::equals).hasSizeBetween(certain, LABELS);
        if (fault.kind() == Kind.NOTHING || fault.kind() == Kind.OUT_OF_LABELS_FOR_A_WHILE)
            assertThat(doubtful).isZero();
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(40));
    }

    /** A family that drops nothing on command is switched off and on by a person, or half a label would swallow the next. */
    private static boolean needsSwitch(Fault fault) {
        boolean drops = !fault.profile().sending().after().clear().isEmpty();
        return fault.kind() == Kind.SWITCHED_OFF || fault.kind() == Kind.UNPLUGGED && !drops;
    }

    /** @param isWell whether a person has put right what was wrong */
    private void night(Fault fault, FakePrinter printer, Journal journal, boolean isWell) throws Exception {
        Files.deleteIfExists(folder.resolve("tty"));
        try (PtyPrinter pty = new PtyPrinter(folder, printer, fault.baud())) {
            if (!isWell) plant(fault, printer, pty);
            LabelRun run = LabelRun.whole(
                            "261204-FI03",
                            "FIRM-12",
                            List.of(new LabelCopies(LabelCopies.Kind.CASE, FakePrinter.PICTURE, false, LABELS)))
                    .from(journal.next());
            labels(pty, fault.profile(), fault.baud()).print(run, journal);
        } catch (DeviceAway away) {
            assertThat(isWell && fault.kind() != Kind.OUT_OF_LABELS_FOR_LONG && fault.kind() != Kind.UNPLUGGED)
                    .as("with all in order nothing goes wrong, but: " + away.getMessage())
                    .isFalse();
        }
    }

    private static SerialLabels labels(PtyPrinter pty, PrinterProfile profile, int baud) {
        return new SerialLabels(
                new LineSettings(pty.device(), baud, LineSettings.Flow.NONE, profile.name(), GROUP, PATIENCE),
                profile,
                Duration.ofMillis(60),
                Duration.ofMillis(900));
    }

    private static void plant(Fault fault, FakePrinter printer, PtyPrinter pty) {
        Random random = new Random(fault.at());
        switch (fault.kind()) {
            case OUT_OF_LABELS_FOR_A_WHILE -> {
                printer.roll(fault.at() - 1);
                after(Duration.ofMillis(300), printer::newRoll);
            }
            case OUT_OF_LABELS_FOR_LONG -> printer.roll(fault.at() - 1);
            case UNPLUGGED, SWITCHED_OFF -> pty.unplugAfter(fault.at());
            case GARBAGE -> pty.answers(bytes -> bytes.length == 0 ? bytes : garbage(random));
            case FLIPPED_BITS -> pty.answers(bytes -> flipped(bytes, random));
            case LATE -> pty.answersLate(150);
            default -> {
                // nothing goes wrong
            }
        }
    }

    private static byte[] garbage(Random random) {
        byte[] garbage = new byte[random.nextInt(9)];
        random.nextBytes(garbage);
        return garbage;
    }

    private static byte[] flipped(byte[] bytes, Random random) {
        byte[] flipped = bytes.clone();
        for (int i = 0; i < flipped.length; i++)
            if (random.nextInt(12) == 0) flipped[i] ^= (byte) (1 << random.nextInt(8));
        return flipped;
    }

    private static void after(Duration time, Runnable what) {
        Thread later = new Thread(() -> {
            try {
                Thread.sleep(time.toMillis());
                what.run();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        later.setDaemon(true);
        later.start();
    }

    /** At 9600 baud the deadline of a group is counted in its bytes; the threads that wait for it sleep. */
    @ParameterizedTest
    @MethodSource("speeds")
    void a_printer_that_stalls_for_ever_costs_its_deadline_and_no_processor(int baud) throws Exception {
        // Minutes, because a pipe swallows half a minute's bytes first; SerialLabelsTest has the same on a fast line.
        assumeThat(IS_LONG).as("only with -Dcampaign=long").isTrue();
        PrinterProfile profile = SampleProfiles.profile("rows-behind-escape");
        Dots picture = noise(400, 550);
        FakePrinter printer = new FakePrinter(profile).stock(400, picture.height());
        Journal journal = new Journal();
        try (PtyPrinter pty = new PtyPrinter(folder, printer, baud).stallAfter(2_000)) {
            LabelRun run = LabelRun.whole(
                    "261204-FI03", "FIRM-12", List.of(new LabelCopies(LabelCopies.Kind.CASE, picture, false, GROUP)));
            int bytes = new dawnkettle.label.Framing(profile).group(picture, GROUP).length;
            FutureTask<DeviceAway> printing = new FutureTask<>(() -> {
                try {
                    labels(pty, profile, baud).print(run, journal);
                    return null;
                } catch (DeviceAway away) {
                    return away;
                }
            });
            long start = System.nanoTime();
            new Thread(printing, "label-line-caller").start();
            pty.awaitStall();
            assertThat(SerialLabelsTest.shareOfProcessor(Duration.ofSeconds(2))).isLessThan(0.05);
            Duration deadline =
                    new LineSettings(pty.device(), baud, LineSettings.Flow.NONE, "", GROUP, PATIENCE).deadline(bytes);
            DeviceAway away = printing.get(deadline.toSeconds() + 20, TimeUnit.SECONDS);
            assertThat(away.isAmbiguous()).isTrue();
            assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(deadline.plusSeconds(5));
        }
        assertThat(journal.doubtful.cardinality()).isEqualTo(GROUP);
        assertThat(journal.confirmed.cardinality()).isZero();
    }

    static Stream<Integer> speeds() {
        return Stream.of(9_600, 115_200);
    }

    /** Questions apart: while a picture is on the line, the line never waits for us. */
    @Test
    void the_line_is_used_while_sending() throws Exception {
        PrinterProfile profile = SampleProfiles.profile("rows-behind-escape");
        Dots picture = noise(400, 40);
        FakePrinter printer = new FakePrinter(profile).millisALabel(10).stock(400, 40);
        try (PtyPrinter pty = new PtyPrinter(folder, printer, 19_200)) {
            LabelRun run = LabelRun.whole(
                    "261204-FI03", "FIRM-12", List.of(new LabelCopies(LabelCopies.Kind.CASE, picture, false, 2)));
            new SerialLabels(
                            new LineSettings(
                                    pty.device(), 19_200, LineSettings.Flow.NONE, "", 2, Duration.ofSeconds(20)),
                            profile,
                            Duration.ofMillis(60),
                            Duration.ofSeconds(10))
                    .print(run, new Journal());
            assertThat(pty.lineUse())
                    .as("share of the line that is used while sending")
                    .isGreaterThanOrEqualTo(0.95);
        }
        assertThat(printer.printed()).hasSize(2);
    }

    private static Dots noise(int width, int height) {
        Random random = new Random(5);
        Dots.Ink ink = new Dots.Ink(width, height);
        for (int y = 0; y < height; y++) for (int x = 0; x < width; x++) ink.set(x, y, random.nextBoolean());
        return ink.dry();
    }
}
