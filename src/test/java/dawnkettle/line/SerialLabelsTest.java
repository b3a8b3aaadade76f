package dawnkettle.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
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
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The serial line against a pseudo-terminal. What a real line adds (baud, RTS/CTS, drain) no test here can show. */
class SerialLabelsTest {
    private static final int LABELS = 10;
    private static final Duration POLL = Duration.ofMillis(50);

    @TempDir
    Path folder;

    @BeforeEach
    void needs_socat() {
        assumeThat(PtyPrinter.isPossible()).as("socat is not there").isTrue();
    }

    /** Counts what it is told. */
    private static final class Count implements LabelJournal {
        int confirmed;
        int doubtful;
        final List<String> pauses = new ArrayList<>();

        @Override
        public void intended(Confirmed group) {
            assertThat(group.first()).isEqualTo(confirmed + 1);
        }

        @Override
        public void confirmed(Confirmed group) {
            confirmed += group.count();
        }

        @Override
        public void doubtful(Confirmed group) {
            doubtful += group.count();
        }

        @Override
        public void paused(String why) {
            pauses.add(why);
        }
    }

    private static SerialLabels labels(String device, PrinterProfile profile, int baud) {
        return new SerialLabels(
                new LineSettings(device, baud, LineSettings.Flow.NONE, profile.name(), 4, Duration.ofSeconds(3)),
                profile,
                POLL,
                Duration.ofSeconds(2));
    }

    private static LabelRun run(Dots picture, int count) {
        return LabelRun.whole(
                "261204-FI03", "FIRM-12", List.of(new LabelCopies(LabelCopies.Kind.CASE, picture, false, count)));
    }

    @ParameterizedTest
    @CsvSource({
        "rows-behind-escape, 9600",
        "text-with-hex-runs, 9600",
        "line-words, 9600",
        "rows-behind-escape, 115200",
        "text-with-hex-runs, 115200",
        "line-words, 115200"
    })
    void every_label_comes_out_once_and_is_confirmed(String name, int baud) throws Exception {
        PrinterProfile profile = SampleProfiles.profile(name);
        FakePrinter printer = new FakePrinter(profile).millisALabel(10);
        Count count = new Count();
        try (PtyPrinter pty = new PtyPrinter(folder, printer, baud)) {
            labels(pty.device(), profile, baud).print(run(FakePrinter.PICTURE, LABELS), count);
        }
        assertThat(printer.printed()).hasSize(LABELS).containsOnly(FakePrinter.PICTURE);
        assertThat(count.confirmed).isEqualTo(LABELS);
        assertThat(count.doubtful).isZero();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 4, 6})
    void out_of_labels_it_says_so_and_resumes_where_it_stopped(int roll) throws Exception {
        PrinterProfile profile = SampleProfiles.profile("text-with-hex-runs");
        FakePrinter printer = new FakePrinter(profile).millisALabel(10).roll(roll);
        Count count = new Count();
        try (PtyPrinter pty = new PtyPrinter(folder, printer, 115_200)) {
            SerialLabels labels = labels(pty.device(), profile, 115_200);
            assertThatThrownBy(() -> labels.print(run(FakePrinter.PICTURE, LABELS), count))
                    .isInstanceOf(DeviceAway.class)
                    .hasMessageContaining("is out of labels");
            assertThat(count.confirmed).isEqualTo(roll);
            assertThat(count.pauses).contains("label printer on " + pty.device() + " is out of labels; put in labels");
            printer.newRoll();
            int next = count.confirmed + count.doubtful + 1;
            Count rest = new Count();
            rest.confirmed = next - 1;
            labels.print(run(FakePrinter.PICTURE, LABELS).from(next), rest);
            assertThat(rest.confirmed).isEqualTo(LABELS);
        }
        // The one in doubt was under the head and was dropped; it was not printed again by itself.
        assertThat(printer.printed()).hasSize(LABELS - count.doubtful);
    }

    @Test
    void unplugged_within_a_label_its_group_is_in_doubt() throws Exception {
        PrinterProfile profile = SampleProfiles.profile("rows-behind-escape");
        FakePrinter printer = new FakePrinter(profile).millisALabel(10).stock(800, 300);
        Count count = new Count();
        Dots picture = noise(800, 300);
        try (PtyPrinter pty = new PtyPrinter(folder, printer, 921_600).unplugAfter(20_000)) {
            DeviceAway away = catchThrowableOfType(
                    DeviceAway.class,
                    () -> labels(pty.device(), profile, 921_600).print(run(picture, LABELS), count));
            assertThat(away.isAmbiguous()).isTrue();
            assertThat(away).hasMessageContaining("look at labels 1 to 4, 5 to 10 were not printed");
        }
        assertThat(count.confirmed).isZero();
        assertThat(count.doubtful).isEqualTo(4);
    }

    @Test
    void a_printer_that_stops_reading_is_left_at_its_deadline_without_burning_the_processor() throws Exception {
        PrinterProfile profile = SampleProfiles.profile("rows-behind-escape");
        FakePrinter printer = new FakePrinter(profile).millisALabel(10).stock(800, 1_200);
        Count count = new Count();
        Dots picture = noise(800, 1_200);
        try (PtyPrinter pty = new PtyPrinter(folder, printer, 921_600).stallAfter(30_000)) {
            SerialLabels labels = labels(pty.device(), profile, 921_600);
            int bytes = new dawnkettle.label.Framing(profile).group(picture, 2).length;
            long start = System.nanoTime();
            FutureTask<DeviceAway> printing = new FutureTask<>(() ->
                    catchThrowableOfType(DeviceAway.class, () -> labels.print(run(picture, 2), count)));
            new Thread(printing, "label-line-caller").start();
            pty.awaitStall();
            double share = shareOfProcessor(Duration.ofSeconds(2));
            DeviceAway away = printing.get(60, TimeUnit.SECONDS);
            assertThat(share).as("share of one processor while stalled").isLessThan(0.05);
            assertThat(away.isAmbiguous()).isTrue();
            assertThat(away).hasMessageContaining(" and no more");
            assertThat(count.doubtful).isEqualTo(2);
            // Five seconds more are for a busy machine to start, ask and frame.
            Duration deadline = new LineSettings(
                            pty.device(), 921_600, LineSettings.Flow.NONE, "", 4, Duration.ofSeconds(3))
                    .deadline(bytes);
            assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(deadline.plusSeconds(5));
        }
    }

    /** What the writing thread and the one that waits for it use; compilers and collectors of the machine are not theirs. */
    static double shareOfProcessor(Duration window) throws InterruptedException {
        long before = threadNanos();
        long start = System.nanoTime();
        Thread.sleep(window.toMillis());
        return (threadNanos() - before) / (double) (System.nanoTime() - start);
    }

    private static long threadNanos() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        List<Long> ours = Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                .filter(thread -> thread != null && thread.getThreadName().startsWith("label-line-"))
                .map(ThreadInfo::getThreadId)
                .toList();
        assertThat(ours).hasSize(2);
        return ours.stream().mapToLong(threads::getThreadCpuTime).sum();
    }

    private static Dots noise(int width, int height) {
        Random random = new Random(4);
        Dots.Ink ink = new Dots.Ink(width, height);
        for (int y = 0; y < height; y++) for (int x = 0; x < width; x++) ink.set(x, y, random.nextBoolean());
        return ink.dry();
    }

    @ParameterizedTest
    @ValueSource(strings = {"not-there", "not-there/tty", "."})
    void a_path_that_is_not_there_is_never_taken_for_another(String path) {
        String device = folder.resolve(path).toString();
        Count count = new Count();
        DeviceAway away = catchThrowableOfType(
                DeviceAway.class,
                () -> labels(device, SampleProfiles.profile("line-words"), 9_600)
                        .print(run(FakePrinter.PICTURE, LABELS), count));
        assertThat(away.isAmbiguous()).isFalse();
        assertThat(away).hasMessage("label printer on " + device + " is not there; plug it in and switch it on");
    }

    @Test
    void a_file_that_is_no_port_is_refused() throws Exception {
        Path file = Files.writeString(folder.resolve("file"), "x");
        assertThatThrownBy(() -> labels(file.toString(), SampleProfiles.profile("line-words"), 9_600)
                        .print(run(FakePrinter.PICTURE, LABELS), new Count()))
                .isInstanceOf(DeviceAway.class);
        assertThat(file).hasContent("x");
    }

    // By arithmetic: 960 bytes a second at 9600 baud, three times over, and five seconds.
    @Test
    void the_deadline_follows_bytes_and_baud() {
        LineSettings settings =
                new LineSettings("/dev/x", 9_600, LineSettings.Flow.RTS_CTS, "line-words", 10, Duration.ofSeconds(600));
        assertThat(settings.deadline(96_000)).isEqualTo(Duration.ofSeconds(305));
        assertThatThrownBy(() -> new LineSettings(
                        "/dev/x", 300, LineSettings.Flow.NONE, "line-words", 10, Duration.ofSeconds(600)))
                .hasMessage("baud \"300\" is not 1200 to 921600; write what the printer is set to");
    }
}
